import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centsFromAmount, DEFAULT_OPTIONS, planOptionPairs, readPlanOptions } from '../../../app/_address/plan-options';
import type { PlanOptions } from '../../../shared/schemas/plan';
import { INSTRUMENTS, NEEDS } from '../../../shared/schemas/terms';

const listed = fc.record({ instruments: fc.subarray([...INSTRUMENTS]), needs: fc.subarray([...NEEDS]) });
const unlisted = fc.constant({ instruments: null, needs: null });
const options: fc.Arbitrary<PlanOptions> = fc
  .record({
    hourValueCents: fc.integer({ min: 0, max: 1_000_000 }),
    maxStage: fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const, 4 as const),
    handOverCents: fc.integer({ min: 0, max: 99_999_999 }),
    struck: fc.uniqueArray(
      fc.record({ kind: fc.constantFrom('check' as const, 'fix' as const), id: fc.stringMatching(/^[a-z]{1,8}$/) }),
      {
        selector: (step) => `${step.kind}.${step.id}`,
        maxLength: 5,
      },
    ),
  })
  .chain((rest) => fc.oneof(listed, unlisted).map((have) => ({ ...rest, ...have })));

function paramsOf(pairs: [string, string][]): Record<string, string[]> {
  const params: Record<string, string[]> = {};
  for (const [name, value] of pairs) params[name] = [...(params[name] ?? []), value];
  return params;
}

describe('readPlanOptions', () => {
  it('reads back all options that planOptionPairs wrote', () => {
    fc.assert(
      fc.property(options, (chosen) => {
        expect(readPlanOptions(paramsOf(planOptionPairs(chosen)))).toEqual(chosen);
      }),
    );
  });

  it('takes the default for what is not said or makes no sense', () => {
    expect(readPlanOptions({})).toEqual(DEFAULT_OPTIONS);
    expect(readPlanOptions({ hour: 'much', stage: '9', over: '-3', strike: 'nothing' })).toEqual(DEFAULT_OPTIONS);
  });

  it('takes a sent form without a tick as having nothing at hand, and no form as having everything', () => {
    expect(readPlanOptions({ own: '1' })).toMatchObject({ instruments: [], needs: [] });
    expect(readPlanOptions({})).toMatchObject({ instruments: null, needs: null });
  });
});

describe('centsFromAmount', () => {
  it.each([
    ['12.50', 1250],
    ['12,5', 1250],
    ['7', 700],
    ['0.07', 7],
    [' 3.10 ', 310],
  ])('reads %j as %i hundredths', (amount, cents) => expect(centsFromAmount(amount)).toBe(cents));

  it.each(['', '1.234', '-1', 'ten', '1e3', '1 000'])('does not read %j', (amount) => expect(centsFromAmount(amount)).toBeNull());
});
