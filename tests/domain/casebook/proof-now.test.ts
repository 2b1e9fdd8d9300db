import { describe, expect, it } from 'vitest';
import { proofNow, sumAfterwards } from '../../../shared/domain/casebook/proof-now';
import type { CaseContent, Proof } from '../../../shared/schemas/case';
import { smallCases } from '../../server/fixtures/small-cases';

const [record] = smallCases(1);
const content = record?.content as CaseContent;
const cured = (proof: Proof | null, over: Partial<CaseContent> = {}): CaseContent => ({
  ...content,
  steps: [{ kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: null }], result: 'cured' }],
  outcome: 'resolved',
  proof,
  ...over,
});
const held = { heldMonths: 6, cameBackMonths: null };
const cameBack = { heldMonths: 6, cameBackMonths: 9 };

describe('proofNow', () => {
  // The order of proofs is the one of the statistics: substitution, measurement, repair held, suspected.
  it.each<[string, Proof | null, Parameters<typeof proofNow>[1], Proof | null]>([
    ['stays where nothing was reported', 'suspected', null, 'suspected'],
    ['rises from suspected to repair held', 'suspected', held, 'repair-held'],
    ['stays above what holding can prove', 'measurement', held, 'measurement'],
    ['falls back where only holding had proved it', 'repair-held', cameBack, 'suspected'],
    ['stays suspected where it held and then came back', 'suspected', cameBack, 'suspected'],
    ['stands by itself after substitution', 'substitution', cameBack, 'substitution'],
    ['is none where no cause was found', null, held, null],
  ])('%s', (_, proof, after, expected) => expect(proofNow(cured(proof), after)).toBe(expected));

  it('does not rise where nothing had cured, or the case did not end resolved', () => {
    expect(proofNow(cured('suspected', { steps: [] }), held)).toBe('suspected');
    expect(proofNow(cured('suspected', { outcome: 'partly-resolved' }), held)).toBe('suspected');
  });
});

describe('sumAfterwards', () => {
  it('keeps the longest time that it held and the shortest after which it came back', () => {
    expect(sumAfterwards([])).toBeNull();
    const reports = [
      { kind: 'held', months: 3 },
      { kind: 'held', months: 12 },
      { kind: 'came-back', months: 20 },
      { kind: 'came-back', months: 14 },
    ];
    expect(sumAfterwards(reports)).toEqual({ heldMonths: 12, cameBackMonths: 14 });
  });
});
