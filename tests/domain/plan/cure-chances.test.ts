import { describe, expect, it } from 'vitest';
import { cureChances } from '../../../shared/domain/plan/cure-chances';
import { plainCase } from '../../server/fixtures/plain-case';
import { smallModel } from '../../server/fixtures/small-model';

const tried = (fix: string, result: 'cured' | 'no-change') => ({
  kind: 'fix' as const,
  fixes: [{ fix, designator: null }],
  result,
});

function chances(model: ReturnType<typeof smallModel>, slug: string) {
  const fix = model.words.fixes.get(slug);
  if (!fix) throw new Error(`No fix ${slug}.`);
  return cureChances(model)(fix);
}

describe('cureChances', () => {
  it('counts tries on units whose cause the fix addresses, bad parts among them, shrunk toward all fixes', () => {
    const cases = Array.from({ length: 10 }, (_, i) =>
      plainCase(i, { steps: [tried('replace-crystal', i < 8 ? 'cured' : 'no-change')] }),
    );
    const model = smallModel(cases);
    const crystal = chances(model, 'replace-crystal')[model.coding.causeOf('clock-crystal-stopped') ?? -1];
    // All fixes: 8.5 of 11. The fix: (8 + 4 x 8.5/11) / 14. The cause the same once more.
    const overall = 8.5 / 11;
    const ofFix = (8 + 4 * overall) / 14;
    expect(crystal).toBeCloseTo((8 + 4 * ofFix) / 14, 12);
  });

  it('takes no notice of a fix tried where its cause was not the fault', () => {
    const wrongTry = plainCase(1, { steps: [tried('replace-video-generator', 'no-change'), tried('replace-crystal', 'cured')] });
    const without = plainCase(1, { steps: [tried('replace-crystal', 'cured')] });
    expect(chances(smallModel([wrongTry]), 'replace-video-generator')).toEqual(
      chances(smallModel([without]), 'replace-video-generator'),
    );
  });

  it('is 0 for causes that the fix does not address and for the unlisted one', () => {
    const model = smallModel([plainCase(1)]);
    const cure = chances(model, 'replace-crystal');
    expect(cure.filter((p) => p > 0)).toHaveLength(1);
    expect(cure.at(-1)).toBe(0);
  });
});
