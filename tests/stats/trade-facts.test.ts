import { describe, expect, it } from 'vitest';
import { demoWorld } from '../../seed/demo-world';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { encodeFindings } from '../../shared/domain/coding/encode-findings';
import type { Finding } from '../../shared/schemas/finding';
import { countAll } from '../../shared/stats/evaluate-table';
import { fitSettings } from '../../shared/stats/fit-settings';
import type { Settings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';

const coding = createCoding(demoWorld.vocabulary, demoWorld.catalogue);
const { layout } = coding;
const BOARD = 'quellbrook-8-rev-a';
const device = coding.deviceOf(BOARD) as number;
const C = layout.causeCount;

const recordsOf = (seed: number, count: number) =>
  demoWorld.drawCases(seed, count).map(({ content }) => encodeCase(coding, content));

/** An estimator learned from demo cases. */
function learn(settings: Settings, seed: number, count: number) {
  const counts = countAll(layout, recordsOf(seed, count));
  return { counts, estimator: createEstimator(layout, counts, settings) };
}

const check = (id: string, value: string): Finding => ({ kind: 'check', id, value });
const rolesCauses = (roles: readonly string[]) =>
  demoWorld.vocabulary.causes.filter((cause) => roles.includes(cause.role)).map((cause) => coding.causeOf(cause.slug) as number);

// Each a fact of the trade: common practice, no source.
describe.each([500, 4000])('facts of the trade with %i cases', { timeout: 240_000 }, (count) => {
  // A fit takes most of this file's time, so it looks at few cases; one, of other cases, does for the three large casebooks.
  const fitOn = (seed: number) => fitSettings(layout, recordsOf(seed, count), { maxRecords: 120 });
  const shared = count > 1000 ? fitOn(21) : null;
  describe.each([1, 11, 12])('seed %i', (seed) => {
    const { counts, estimator } = learn(shared ?? fitOn(seed), seed, count);
    const ask = (findings: Finding[]) =>
      estimator.probabilities(device, encodeFindings(coding, findings, { complete: false, device: BOARD }));
    const odds = (p: Float64Array, roles: readonly string[]) => {
      const share = rolesCauses(roles).reduce((sum, c) => sum + (p[c] as number), 0);
      return share / (1 - share);
    };
    const grey: Finding = { kind: 'symptom', id: 'grey-screen', value: 'present' };

    const crystalFall = () => {
      const before = odds(ask([grey]), ['clock-crystal']);
      return (
        before /
        odds(ask([grey, check('clock-at-processor', 'pulsing'), check('clock-at-video-generator', 'pulsing')]), ['clock-crystal'])
      );
    };

    it('a clock seen pulsing at processor and video generator makes the crystal ten times less likely', () => {
      expect(crystalFall()).toBeGreaterThan(10);
    });

    it('a part replaced without change lowers each cause that this addresses fivefold against each that it does not', () => {
      let compared = 0;
      for (const fix of demoWorld.vocabulary.fixes.filter((f) => f.action === 'replace')) {
        const o = coding.observableOf('fix', fix.slug) as number;
        const { table, weight } = estimator.outcomeTable(device, o);
        const shares = Array.from({ length: C }, (_, c) => ({ c, share: (table[c * 5] as number) ** weight })).filter(
          ({ c }) => (counts.causeRecords[c] as number) > 0,
        );
        const isOn = ({ c }: { c: number }) => layout.onTarget[o * C + c] === 1;
        const on = shares.filter(isOn).map(({ share }) => share);
        if (on.length === 0) continue;
        compared += 1;
        const off = shares.filter((s) => !isOn(s)).map(({ share }) => share);
        expect(Math.min(...off) / Math.max(...on), fix.slug).toBeGreaterThan(5);
      }
      expect(compared).toBeGreaterThan(20);
    });

    it('a working unit on the same supply, cable and display clears those three', () => {
      const outside = ['external-supply', 'av-cable', 'display'];
      const before = odds(ask([grey]), outside);
      const after = odds(ask([grey, check('working-unit-same-chain', 'works')]), outside);
      expect(before / after).toBeGreaterThan(5);
    });
  });
});
