import { describe, expect, it } from 'vitest';
import { demoWorld } from '../../../seed/demo-world';
import { createCoding } from '../../../shared/domain/coding/coding';
import { encodeFindings } from '../../../shared/domain/coding/encode-findings';

const coding = createCoding(demoWorld.vocabulary, demoWorld.catalogue);
const DEVICE = 'quellbrook-8-rev-b';

const question = (...present: string[]) =>
  encodeFindings(
    coding,
    present.map((id) => ({ kind: 'symptom' as const, id, value: 'present' as const })),
    { complete: false, device: DEVICE },
  );

describe('a symptom that another stated one hides', () => {
  it('is as if it had not been mentioned: "dead, no picture" is "dead", in either order', () => {
    expect(question('no-power', 'no-picture')).toEqual(question('no-power'));
    expect(question('no-picture', 'no-power')).toEqual(question('no-power'));
    expect(question('no-picture')).not.toEqual(question('no-power'));
  });

  it('counts where what would hide it was not stated, or is said to be absent', () => {
    const no = coding.observableOf('symptom', 'no-picture');
    expect(question('no-picture').some(({ observable }) => observable === no)).toBe(true);
    const findings = [
      { kind: 'symptom' as const, id: 'no-picture', value: 'present' as const },
      { kind: 'symptom' as const, id: 'no-power', value: 'absent' as const },
    ];
    const coded = encodeFindings(coding, findings, { complete: false, device: DEVICE });
    expect(coded.find(({ observable }) => observable === no)).toMatchObject({ value: 1, implied: false });
  });
});
