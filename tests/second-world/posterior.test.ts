import { describe, expect, it, vi } from 'vitest';
import { vocabulary } from '../../seed/vocabulary';
import type { SimulatedUnit } from '../../seed/world';
import type { Finding } from '../../shared/schemas/finding';
import { drawUnit } from './draw-unit';
import { boardModel } from './model/fault-model';
import { secondWorld } from './second-world';
import { seededRandom } from './seeded-random';

vi.setConfig({ testTimeout: 60_000 });

const boards = secondWorld.catalogue.models.flatMap((model) => model.boards);
const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0);
const symptom = (id: string, value: 'present' | 'absent'): Finding => ({ kind: 'symptom', id, value });
const seen = (unit: SimulatedUnit): Finding[] => unit.symptoms.map((s) => symptom(s.symptom, s.present ? 'present' : 'absent'));

describe('secondWorld.truePosterior', () => {
  it('is the prior where nothing was recorded', () => {
    for (const board of boards) {
      const prior = secondWorld.prior(board.slug);
      for (const [cause, chance] of secondWorld.truePosterior(board.slug, [])) expect(chance).toBeCloseTo(prior.get(cause)!, 12);
    }
  });

  it('takes nothing from a hidden symptom, one of another category, or a finding repeated', () => {
    const board = 'odrani-tumble-t1';
    const base = [symptom('no-power', 'present')];
    const expected = secondWorld.truePosterior(board, base);
    const noise = [symptom('garbage-screen', 'absent'), symptom('no-raster', 'present'), symptom('no-power', 'present')];
    expect(secondWorld.truePosterior(board, [...base, ...noise])).toEqual(expected);
  });

  it('refuses unknown checks, outcomes and fixes by name', () => {
    const ask = (finding: Finding) => () => secondWorld.truePosterior('odrani-tumble-t1', [finding]);
    expect(ask({ kind: 'check', id: 'no-such-check', value: 'x' })).toThrow(/No check "no-such-check"/);
    expect(ask({ kind: 'check', id: 'rail-5v', value: 'purple' })).toThrow(/no outcome "purple"/);
    expect(ask({ kind: 'fix', id: 'no-such-fix', value: 'cured' })).toThrow(/No fix "no-such-fix"/);
  });

  /** Units that happen to match the findings, counted by true cause: the definition of the posterior, by brute force. */
  function countMatches(board: string, findings: readonly Finding[], draws: number): Map<string, number> {
    const random = seededRandom(20_26);
    const counts = new Map<string, number>();
    for (let i = 0; i < draws; i += 1) {
      const unit = drawUnit(random, board);
      const matches = findings.every((finding) => {
        if (finding.kind === 'check') return unit.check(finding.id) === finding.value;
        if (finding.kind === 'fix') return unit.fix(finding.id) === finding.value;
        return unit.symptoms.find((s) => s.symptom === finding.id)?.present === (finding.value === 'present');
      });
      if (matches) counts.set(unit.cause, (counts.get(unit.cause) ?? 0) + 1);
    }
    return counts;
  }

  it.each<[string, Finding[]]>([
    ['odrani-tumble-t1', [symptom('garbage-screen', 'absent'), { kind: 'check', id: 'rail-5v', value: 'low' }]],
    [
      'kestring-km-14-main',
      [
        symptom('no-power', 'absent'),
        { kind: 'check', id: 'b-plus-voltage', value: 'low' },
        { kind: 'fix', id: 'recap-monitor', value: 'no-change' },
      ],
    ],
  ])('agrees with 60,000 drawn units of %s that match the findings', (board, findings) => {
    const counts = countMatches(board, findings, 60_000);
    const matched = sum(counts.values());
    expect(matched).toBeGreaterThan(1000);
    for (const [cause, chance] of secondWorld.truePosterior(board, findings)) {
      const error = Math.sqrt((chance * (1 - chance)) / matched);
      expect(Math.abs((counts.get(cause) ?? 0) / matched - chance)).toBeLessThan(4.5 * error + 1 / matched);
    }
  });

  it('is calibrated and beats the prior on 3,000 units', () => {
    const random = seededRandom(77);
    const total = { hits: 0, promised: 0, loss: 0, priorLoss: 0 };
    for (let i = 0; i < 3000; i += 1) {
      const board = boards[i % boards.length]!.slug;
      const unit = drawUnit(random, board);
      const checks = boardModel(board).checks.filter((_, k) => k % 9 === i % 9);
      const asked = checks.map((check): Finding => ({ kind: 'check', id: check.slug, value: unit.check(check.slug) }));
      const posterior = secondWorld.truePosterior(board, [...seen(unit), ...(i % 2 ? asked : [])]);
      const [top, chance] = [...posterior].reduce((a, b) => (b[1] > a[1] ? b : a));
      total.hits += top === unit.cause ? 1 : 0;
      total.promised += chance;
      total.loss -= Math.log(posterior.get(unit.cause)!);
      total.priorLoss -= Math.log(secondWorld.prior(board).get(unit.cause)!);
    }
    expect(Math.abs(total.hits - total.promised) / 3000).toBeLessThan(0.02);
    expect(total.loss / 3000).toBeLessThan(0.6 * (total.priorLoss / 3000));
  });
});

describe('secondWorld.drawUnit', () => {
  it('answers the same whatever was asked before, and refuses a check that makes no sense', () => {
    const first = secondWorld.drawUnit(seededRandom(5), 'odrani-minnow-a');
    const second = secondWorld.drawUnit(seededRandom(5), 'odrani-minnow-a');
    const slugs = boardModel('odrani-minnow-a').checks.map((check) => check.slug);
    const forwards = slugs.map((slug) => first.check(slug));
    const backwards = [...slugs].reverse().map((slug) => second.check(slug));
    expect(backwards.reverse()).toEqual(forwards);
    expect(slugs.map((slug) => first.check(slug))).toEqual(forwards);
    expect(first.fix('replace-lcd-panel')).toBe(second.fix('replace-lcd-panel'));
    expect(() => first.check('heater-glow')).toThrow(/makes no sense/);
  });

  it('leaves out symptoms that a present one hides', () => {
    const random = seededRandom(6);
    const hiddenBy = new Map(vocabulary.symptoms.map((entry) => [entry.slug, entry.hiddenBy]));
    for (let i = 0; i < 300; i += 1) {
      const unit = drawUnit(random, boards[i % boards.length]!.slug);
      const present = new Set(unit.symptoms.filter((s) => s.present).map((s) => s.symptom));
      expect(unit.symptoms.filter((s) => hiddenBy.get(s.symptom)!.some((hider) => present.has(hider)))).toEqual([]);
    }
  });
});
