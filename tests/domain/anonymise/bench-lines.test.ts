import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../seed/catalogue';
import { demoWorld } from '../../../seed/demo-world';
import { vocabulary } from '../../../seed/vocabulary';
import { findPersonalDetails } from '../../../shared/domain/anonymise/find-personal-details';
import { knownWordsOf } from '../../../shared/domain/anonymise/known-words';
import { type Line, scoreLines } from './score';

const known = knownWordsOf(vocabulary, catalogue);
const HALVES = ['first', 'second'].map((half) => ({ half, file: new URL(`./lines-${half}-half.json`, import.meta.url) }));

describe.each(HALVES)('findPersonalDetails on the $half half of the bench lines', ({ half, file }) => {
  const lines = JSON.parse(readFileSync(file, 'utf8')) as Line[];
  const direct = scoreLines(lines, known, (kind) => kind !== 'place');
  const all = scoreLines(lines, known);

  // The second half was written apart from the rules: its misses are not printed, so that nobody tunes on them. Its first score was .864.
  it('finds at least 95 % of direct identifiers', () => {
    console.log(
      `${half} half: recall ${direct.recall.toFixed(4)} of ${direct.total} direct, ${all.recall.toFixed(4)} of ${all.total} with places; ` +
        `${all.wrong.length} of ${all.clean} clean lines flagged`,
    );
    expect(direct.recall).toBeGreaterThanOrEqual(0.95);
  });

  it('flags at most 2 % of clean bench lines', () => {
    expect(all.clean).toBeGreaterThan(50);
    expect(all.flagged).toBeLessThanOrEqual(0.02);
  });
});

describe('findPersonalDetails on what has no person in it', () => {
  it('flags at most 2 % of the narratives of the demo world', { timeout: 60_000 }, () => {
    const told = demoWorld.drawCases(11, 400).map(({ content }) => content.narrative);
    const flagged = told.filter((narrative) => findPersonalDetails(narrative, known).length > 0);
    expect(flagged.length / told.length).toBeLessThanOrEqual(0.02);
  });

  it('flags no label or synonym of the vocabulary', { timeout: 60_000 }, () => {
    const { symptoms, checks, causes, fixes, roles } = vocabulary;
    const labels = [...symptoms, ...checks, ...causes, ...fixes, ...roles].flatMap((entry) => [entry.label, ...('synonyms' in entry ? entry.synonyms : [])]);
    expect(labels.length).toBeGreaterThan(1000);
    expect(labels.filter((label) => findPersonalDetails(label, known).length > 0)).toEqual([]);
  });
});
