import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../seed/catalogue';
import { vocabulary } from '../../../seed/vocabulary';
import { createReader, readQuery } from '../../../shared/domain/read-query/read-query';
import { type ExpectedPhrase, scorePhrases } from './score';

const read = createReader(vocabulary, catalogue);
const folder = new URL('.', import.meta.url);

function phrasesOf(name: string): ExpectedPhrase[] {
  return JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as ExpectedPhrase[];
}

function findingsOf(text: string): string[] {
  return read(text).findings.map((f) => `${f.id} ${f.value}`);
}

const FILES = ['phrases-first-half.json', 'phrases-second-half.json'].filter((name) => existsSync(new URL(name, folder)));

describe.each(FILES)('readQuery on %s', (name) => {
  const phrases = phrasesOf(name);

  it('expects only what the vocabulary has', () => {
    for (const { text, findings } of phrases) {
      for (const f of findings) {
        const known =
          f.kind === 'symptom'
            ? vocabulary.symptoms.some((s) => s.slug === f.id)
            : f.kind === 'fix'
              ? vocabulary.fixes.some((x) => x.slug === f.id)
              : vocabulary.checks.some((c) => c.slug === f.id && c.outcomes.some((o) => o.slug === f.value));
        expect(known, `${text}: ${f.kind} ${f.id} ${f.value}`).toBe(true);
      }
    }
  });

  it('reads findings with precision of at least .97 and recall of at least .93', () => {
    const score = scorePhrases(phrases, read);
    expect(score.expected).toBeGreaterThanOrEqual(phrases.length);
    expect(score.precision, JSON.stringify(score.misses, null, 1)).toBeGreaterThanOrEqual(0.97);
    expect(score.recall, JSON.stringify(score.misses, null, 1)).toBeGreaterThanOrEqual(0.93);
  });

  it('finds the devices mentioned', () => {
    const score = scorePhrases(phrases, read);
    expect(score.devicesRight).toBe(score.devices);
  });
});

describe('readQuery', () => {
  it('tells a medium that does not start from the diagnostic one, and what happens at a touch', () => {
    expect(findingsOf('cartridge not starting, resets when touched')).toEqual(['cartridge-not-read present', 'changes-when-flexed present']);
    expect(findingsOf('diag cart not starting')).toEqual(['diagnostic-medium does-not-start']);
    expect(findingsOf('tape not starting')).toEqual(['tape-load-errors present']);
  });

  it('reads the standing example with nothing unread', () => {
    const result = readQuery('grey screen, clock present', vocabulary, catalogue);
    expect(result.findings.map(({ kind, id, value, text }) => ({ kind, id, value, text }))).toEqual([
      { kind: 'symptom', id: 'grey-screen', value: 'present', text: 'grey screen' },
      { kind: 'check', id: 'clock-at-processor', value: 'pulsing', text: 'clock present' },
    ]);
    expect(result).toMatchObject({ unread: [], ambiguous: [], device: null });
  });

  it('reads nothing from nothing', () => {
    expect(read('')).toEqual({ findings: [], unread: [], ambiguous: [], device: null });
    expect(read(' ,.;- ')).toEqual({ findings: [], unread: [], ambiguous: [], device: null });
  });

  it('offers the outcomes of a bare check', () => {
    const [span] = read('clock').ambiguous;
    expect(span?.text).toBe('clock');
    expect(span?.choices.map((c) => `${c.id} ${c.value}`)).toContain('clock-at-processor pulsing');
    expect(span?.choices.map((c) => `${c.id} ${c.value}`)).toContain('clock-at-processor stuck');
    expect(read('clock').findings).toEqual([]);
  });

  it('returns words it does not know as unread, in place', () => {
    const result = read('grey screen, frobnicated widgetry');
    expect(result.findings).toHaveLength(1);
    expect(result.unread).toEqual([{ text: 'frobnicated widgetry', start: 13, end: 33 }]);
  });

  it('returns what lies beyond a page as one unread span', () => {
    const tail = 'lorem '.repeat(2000);
    const result = read(`grey screen. ${tail}`);
    expect(result.findings.map((f) => f.id)).toEqual(['grey-screen']);
    expect(result.unread.at(-1)?.end).toBe(`grey screen. ${tail}`.trimEnd().length);
  });

  it('keeps a finding that is said twice once, and asks about a contradiction', () => {
    expect(findingsOf('grey screen, grey picture')).toEqual(['grey-screen present']);
    const contradiction = read('clock present, no clock');
    expect(contradiction.findings).toHaveLength(1);
    expect(contradiction.ambiguous[0]?.choices.map((c) => c.value)).toEqual(['stuck', 'pulsing']);
  });

  it('does not let a "no" reach over "but"', () => {
    expect(findingsOf('no clock but reset ok')).toEqual(['clock-at-processor stuck', 'reset-line released']);
  });

  it('lets "or" and "nor" share a "no", and a comma only with what cannot stand alone', () => {
    expect(findingsOf('no picture or sound')).toEqual(['no-picture present', 'no-sound present']);
    expect(findingsOf('no hum or crackle')).toEqual(['hum-in-sound absent', 'crackling-sound absent']);
    expect(findingsOf('clock and reset good')).toEqual(['clock-at-processor pulsing', 'reset-line released']);
    expect(findingsOf('no hum, grey screen')).toEqual(['hum-in-sound absent', 'grey-screen present']);
  });

  it('tells a fix that changed nothing from one that cured', () => {
    expect(findingsOf('replaced the crystal, no change')).toEqual(['replace-crystal no-change']);
    expect(findingsOf('replaced the crystal, fixed it')).toEqual(['replace-crystal cured']);
  });

  it('asks what a fix did where nothing says so', () => {
    const [span] = read('replaced the crystal').ambiguous;
    expect(span?.choices[0]).toMatchObject({ kind: 'fix', id: 'replace-crystal', value: 'no-change' });
  });
});
