import { describe, expect, it } from 'vitest';
import { explainAgainst, explainAgainstAll, strongestRival } from '../../shared/stats/explain';
import { createRandom } from '../../shared/stats/random';
import { defaultSettings } from '../../shared/stats/settings';
import { countAll } from '../../shared/stats/evaluate-table';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { simulateFamily } from './simulate-family';

const family = simulateFamily({ seed: 3, causes: 12, symptoms: 10, checks: 8, fixes: 4, boards: 3, concentration: 3 });
const random = createRandom(4);
const records = Array.from({ length: 400 }, () => family.draw(random));
const settings = { ...defaultSettings(family.layout), weights: Array.from(family.layout.kinds, (_, o) => 0.3 + (o % 5) * 0.25) };
const estimator = createEstimator(family.layout, countAll(family.layout, records), settings);
const queries = records.slice(0, 60).map(({ device, findings }) => ({ device, findings }));
const decibans = (odds: number) => 10 * Math.log10(odds);

describe('explainAgainst', () => {
  it('adds up, prior and findings alone, to the log odds before mixing, and with mixing to those shown', () => {
    for (const query of queries) {
      const scores = estimator.logScores(query.device, query.findings);
      const shown = estimator.probabilities(query.device, query.findings);
      for (const cause of [0, 5, 12]) {
        const rival = strongestRival(shown, cause);
        const { prior, items, total, mixing } = explainAgainst(estimator, query, cause, rival);
        const summed = items.reduce((sum, item) => sum + item.weight, prior);
        const odds = ((scores[cause] as number) - (scores[rival] as number)) * (10 / Math.LN10);
        expect(Math.abs(summed - odds)).toBeLessThan(1e-9);
        expect(Math.abs(total - odds)).toBeLessThan(1e-9);
        expect(Math.abs(total + mixing - decibans((shown[cause] as number) / (shown[rival] as number)))).toBeLessThan(1e-9);
      }
    }
  });

  it('weighs each finding by its exponent and its shares', () => {
    const query = queries[0] as (typeof queries)[0];
    const { items } = explainAgainst(estimator, query, 2, 7);
    const { observable, value, weight } = items[4] as (typeof items)[0];
    const { table, weight: exponent } = estimator.outcomeTable(query.device, observable);
    const K = family.layout.valueCounts[observable] as number;
    expect(weight).toBeCloseTo(exponent * decibans((table[2 * K + value] as number) / (table[7 * K + value] as number)), 9);
  });
});

describe('explainAgainstAll', () => {
  it('adds up to the posterior log odds against all others', () => {
    const interactions: number[] = [];
    for (const query of queries) {
      const shown = estimator.probabilities(query.device, query.findings);
      for (const cause of [0, 3, 8, 12]) {
        const told = explainAgainstAll(estimator, query, cause);
        const others = shown.reduce((sum, p, c) => (c === cause ? sum : sum + p), 0);
        expect(Math.abs(told.total - decibans((shown[cause] as number) / others))).toBeLessThan(1e-9);
        const summed = told.items.reduce((sum, item) => sum + item.weight, told.prior + told.interaction + told.mixing);
        expect(Math.abs(summed - told.total)).toBeLessThan(1e-9);
        interactions.push(Math.abs(told.interaction));
      }
    }
    expect(Math.max(...interactions)).toBeGreaterThan(1);
  });

  it('has no interaction where there is one finding', () => {
    const query = { device: 4, findings: [{ observable: 1, value: 1 }] };
    expect(explainAgainstAll(estimator, query, 3).interaction).toBeCloseTo(0, 9);
  });

  it('weighs a finding against the average of the rivals by their priors', () => {
    const query = { device: 4, findings: [{ observable: 1, value: 1 }] };
    const prior = estimator.prior(4);
    const { table, weight } = estimator.outcomeTable(4, 1);
    let average = 0;
    let rivals = 0;
    prior.forEach((p, c) => {
      if (c === 3) return;
      average += p * (table[c * 2 + 1] as number) ** weight;
      rivals += p;
    });
    const told = explainAgainstAll(estimator, query, 3);
    expect(told.items[0]?.weight).toBeCloseTo(decibans((table[3 * 2 + 1] as number) ** weight / (average / rivals)), 9);
  });
});
