import { describe, expect, it } from 'vitest';
import { demoWorld } from '../../../seed/demo-world';
import { createCoding } from '../../../shared/domain/coding/coding';
import { encodeFindings } from '../../../shared/domain/coding/encode-findings';
import { saysFine } from '../../../shared/domain/read-query/says-fine';

const coding = createCoding(demoWorld.vocabulary, demoWorld.catalogue);
const BOARD = 'quellbrook-8-rev-b';

/** Slugs of the symptoms that are absent without being stated. */
function implied(fine: string[]): string[] {
  const findings = [
    { kind: 'symptom' as const, id: 'no-sound', value: 'present' as const },
    { kind: 'symptom' as const, id: 'no-picture', value: 'absent' as const },
  ];
  return encodeFindings(coding, findings, { complete: false, device: BOARD, fine })
    .filter((finding) => finding.implied)
    .map(({ observable, value }) => {
      expect(value).toBe(0);
      return coding.observables[observable]?.id ?? '';
    });
}

describe('what is absent without being stated', () => {
  it('is no fault of the picture where the picture is fine, and only of the picture', () => {
    const absent = implied(['no-picture']);
    expect(absent).toEqual(expect.arrayContaining(['no-power', 'black-screen', 'garbage-screen', 'picture-rolls', 'wrong-colours']));
    const areas = absent.map((slug) => coding.vocabulary.symptoms.find((symptom) => symptom.slug === slug)?.area);
    expect(new Set(areas)).toEqual(new Set(['power', 'video']));
    expect(absent).not.toContain('distorted-sound');
  });

  it('is only what would have hidden the picture where it is merely there', () => {
    expect(implied([])).toEqual(['no-power']);
  });
});

describe('saysFine', () => {
  const absent = (text: string) => saysFine({ kind: 'symptom', value: 'absent', text });
  it('tells all is well from being there', () => {
    expect(['picture fine', 'Sound OK', 'picture is good', 'keyboard works'].map(absent)).toEqual([true, true, true, true]);
    expect(['has video', 'not dead', 'no hum', ''].map(absent)).toEqual([false, false, false, false]);
    expect(saysFine({ kind: 'symptom', value: 'present', text: 'picture fine' })).toBe(false);
  });
});
