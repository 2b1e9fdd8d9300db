import { describe, expect, it } from 'vitest';
import { CONTRADICTION_KINDS, type ContradictionKind, contradictionsIn } from '../../../shared/domain/review/contradictions';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import type { CaseContent, CaseStep } from '../../../shared/schemas/case';
import { plainContent } from '../../server/fixtures/plain-case';
import { smallCatalogue } from '../../server/fixtures/small-catalogue';
import { smallVocabulary } from '../../server/fixtures/small-vocabulary';

const vocabulary = structuredClone(smallVocabulary);
const nothing = { ...vocabulary.causes[0], slug: 'no-fault-found', label: 'No fault found', role: 'no-part', mode: 'none' };
vocabulary.causes.push(nothing as (typeof vocabulary.causes)[number]);
const words = vocabularyWords(vocabulary, smallCatalogue);

const check = (slug: string, outcome: string, over: object = {}): CaseStep =>
  ({ kind: 'check', check: slug, outcome, designator: null, value: null, unit: null, ...over });
const fix = (slug: string, result: 'cured' | 'no-change'): CaseStep =>
  ({ kind: 'fix', fixes: [{ fix: slug, designator: null }], result });

/** A case that is at one with itself; override what the test is about. */
const sound = (over: Partial<CaseContent> = {}) =>
  plainContent({
    steps: [check('supply-apart', 'in-tolerance'), check('clock-at-processor', 'absent'), fix('replace-crystal', 'cured')],
    provedByStep: 1,
    ...over,
  });

/** For each kind a case that has it; the rules are our own. */
const CASES: Record<ContradictionKind, Partial<CaseContent>> = {
  'outcome-without-cure': { steps: [check('clock-at-processor', 'absent')], provedByStep: 0 },
  'cure-without-outcome': { outcome: 'unresolved' },
  'resolved-without-cause': { causes: [], proof: null, provedByStep: null },
  'nothing-found-but-cured': { causes: [{ cause: 'no-fault-found', designators: [] }] },
  'cure-elsewhere': { steps: [check('clock-at-processor', 'absent'), fix('replace-video-generator', 'cured')], provedByStep: 0 },
  'cause-cleared': { causes: [{ cause: 'supply-dead', designators: [] }] },
  'part-of-another-role': { causes: [{ cause: 'clock-crystal-stopped', designators: ['U5'] }] },
  'symptom-hidden': {
    symptoms: [
      { symptom: 'dead', present: true },
      { symptom: 'grey-screen', present: true },
    ],
  },
  'reading-against-outcome': {
    steps: [check('supply-apart', 'in-tolerance', { value: 4.2, unit: 'V' }), check('clock-at-processor', 'absent'), fix('replace-crystal', 'cured')],
  },
  'two-outcomes': {
    steps: [check('clock-at-processor', 'pulsing'), check('clock-at-processor', 'absent'), fix('replace-crystal', 'cured')],
  },
  'substitution-without-fix': { steps: [check('clock-at-processor', 'absent'), fix('replace-crystal', 'no-change')], provedByStep: null },
  'measurement-without-finding': {
    proof: 'measurement',
    steps: [check('supply-apart', 'in-tolerance'), fix('replace-crystal', 'cured')],
    provedByStep: null,
  },
  'held-without-fix': { proof: 'repair-held', outcome: 'unresolved', steps: [check('clock-at-processor', 'absent')], provedByStep: null },
  'proved-by-working-outcome': { provedByStep: 0 },
  'proof-after-cure': { steps: [fix('replace-crystal', 'cured'), check('clock-at-processor', 'absent')] },
  'fix-after-cure': {
    steps: [check('clock-at-processor', 'absent'), fix('replace-crystal', 'cured'), fix('replace-video-generator', 'no-change')],
    provedByStep: 0,
  },
  'fault-after-cure': { steps: [check('supply-apart', 'low'), fix('replace-crystal', 'cured'), check('supply-apart', 'low')], provedByStep: 0 },
};

const kindsIn = (over: Partial<CaseContent>) => contradictionsIn(words, sound(over)).map((found) => found.kind);

describe('contradictionsIn', () => {
  it('finds none in a case that is at one with itself', () => {
    expect(contradictionsIn(words, sound())).toEqual([]);
  });

  it.each(CONTRADICTION_KINDS)('finds %s', (kind) => {
    expect(kindsIn(CASES[kind])).toContain(kind);
  });

  it('says in a sentence what does not go together, in the words of the vocabulary, and where', () => {
    expect(contradictionsIn(words, sound(CASES['reading-against-outcome']))).toEqual([
      {
        kind: 'reading-against-outcome',
        field: 'steps.0',
        sentence: 'Step 1 reads 4.2 V, which by the rule of “Supply measured apart from the unit” is “low”; it says “in tolerance”.',
      },
    ]);
  });

  it('takes a check repeated after an attempt as one that may have changed, and a reading as what it was rounded from', () => {
    const again = [check('clock-at-processor', 'absent'), fix('replace-crystal', 'cured'), check('clock-at-processor', 'pulsing')];
    expect(kindsIn({ steps: again, provedByStep: 0 })).toEqual([]);
    const borderline = [check('supply-apart', 'low', { value: 4.7, unit: 'V' }), fix('replace-crystal', 'cured')];
    expect(kindsIn({ steps: borderline, provedByStep: 0 })).toEqual([]);
  });
});
