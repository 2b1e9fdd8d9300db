import { describe, expect, it } from 'vitest';
import { demoWorld } from '../../seed/demo-world';
import { knownDemoWorld } from '../../seed/simulate/known-demo-world';
import { addCase, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { defaultSettings } from '../../shared/stats/settings';

const UNITS = 6;

describe('what is known of the demo world', () => {
  it('is the exact posterior, and nothing for a board or findings that it does not have', () => {
    const dead = [{ kind: 'symptom', id: 'no-power', value: 'present' }] as const;
    expect(knownDemoWorld.truePosterior('quellbrook-8-rev-b', dead)).toEqual(demoWorld.truePosterior('quellbrook-8-rev-b', dead));
    expect(knownDemoWorld.truePosterior('no-such-board', dead)).toBeNull();
  });

  it('repairs the same invented units by advice and by habit, and reports minutes with the hand-over in them', () => {
    const model = createCasebookModel(demoWorld.vocabulary, demoWorld.catalogue, ({ layout }) => defaultSettings(layout));
    demoWorld.drawCases(5, 150).forEach(({ content }, i) => addCase(model, { id: `case-${i}`, status: 'accepted', content }));
    const told: number[] = [];
    const run = () => knownDemoWorld.simulateRepairs(model, { units: UNITS, seed: '9', onProgress: (done) => told.push(done) });
    const summary = run();
    expect(told).toEqual([1, 2, 3, 4, 5, 6]);
    const habits = ['most common first', 'cheapest first', 'most likely first', 'plain most common', 'plain cheapest', 'plain most likely'];
    expect(summary.policies.map(({ policy }) => policy)).toEqual(['plan', 'first check', ...habits]);
    for (const { minutes, benchMinutes, repaired } of summary.policies) {
      // Handing over is worth 450 minutes at the defaults: 150 to stop, at 20 an hour.
      expect(minutes.mean).toBeCloseTo(benchMinutes + 450 * (1 - repaired), 9);
    }
    const minutesOf = (name: string) => summary.policies.find(({ policy }) => policy === name)?.minutes.mean ?? 0;
    const against = summary.ratios.find(({ policy, habit }) => policy === 'plan' && habit === 'cheapest first');
    expect(against?.minutes.mean).toBeCloseTo(minutesOf('plan') / minutesOf('cheapest first'), 12);
    expect(run()).toEqual(summary);
    expect(knownDemoWorld.repairLines(summary)[0]).toContain('6 units');
  }, 60_000);
});
