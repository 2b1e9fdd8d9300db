import { beforeAll, describe, expect, it, vi } from 'vitest';
import { demoFaultWorld, demoWorld } from '../../seed/demo-world';
import { boardNetwork, findingsEvidence } from '../../seed/engine/board-network';
import { unitWithWay } from '../../seed/engine/draw-unit';
import { logFindingsProbability, withImpliedAbsences } from '../../seed/engine/true-posterior';
import { logEvidence, posterior } from '../../seed/enumerator';
import { seededRandom } from '../../seed/random';
import { caseContentSchema, workingUnitSchema } from '../../shared/schemas/case';
import { catalogueSchema } from '../../shared/schemas/device';
import type { Finding } from '../../shared/schemas/finding';

// Whole worlds are drawn here: seconds on an idle machine, more on a busy one.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const BOARDS = [
  'quellbrook-8-rev-a',
  'ormadic-duo-rev-2',
  'tessaly-pocket-rev-1',
  'quellbrook-cm14-rev-1',
  'quellbrook-du5-rev-1',
];

/** What a unit shows: its symptoms, some checks, some fixes. */
function findingsOf(board: string, seed: number): Finding[] {
  const unit = demoWorld.drawUnit(seededRandom(seed), board);
  const numbers = demoFaultWorld.numbers(board);
  const every = <T>(items: Iterable<T>, step: number) => [...items].filter((_, index) => index % step === seed % step);
  return [
    ...unit.symptoms.map(
      ({ symptom, present }): Finding => ({ kind: 'symptom', id: symptom, value: present ? 'present' : 'absent' }),
    ),
    ...every(numbers.checks.keys(), 12).map((id): Finding => ({ kind: 'check', id, value: unit.check(id) })),
    ...every(numbers.fixes.keys(), 25).map((id): Finding => ({ kind: 'fix', id, value: unit.fix(id) })),
  ];
}

describe('truePosterior', () => {
  it.each(BOARDS)(
    'equals exact enumeration of the network on %s',
    (board) => {
      for (const seed of [1, 2, 3]) {
        const findings = withImpliedAbsences(demoFaultWorld.numbers(board), findingsOf(board, seed));
        const network = boardNetwork(demoFaultWorld.numbers(board), findings);
        const exact = posterior(network, 'cause', findingsEvidence(findings));
        const fast = demoWorld.truePosterior(board, findings);
        for (const [cause, p] of exact) expect(fast.get(cause)).toBeCloseTo(p, 10);
        expect(logFindingsProbability(demoFaultWorld.numbers(board), findings)).toBeCloseTo(
          logEvidence(network, findingsEvidence(findings)),
          8,
        );
      }
    },
    30_000,
  );

  it('agrees with counting units that show the same', () => {
    // 60,000 units, those that show the stated findings kept: four standard errors stay below 0.05.
    const board = 'quellbrook-cm14-rev-1';
    const random = seededRandom(11);
    const kept = new Map<string, number>();
    let total = 0;
    for (let i = 0; i < 60_000; i += 1) {
      const unit = demoWorld.drawUnit(random, board);
      const raster = unit.symptoms.find((each) => each.symptom === 'no-raster');
      if (!raster?.present || unit.check('heater-glow') !== 'glowing' || unit.check('fuse-continuity') !== 'continuous') continue;
      total += 1;
      kept.set(unit.cause, (kept.get(unit.cause) ?? 0) + 1);
    }
    const exact = demoWorld.truePosterior(board, [
      { kind: 'symptom', id: 'no-raster', value: 'present' },
      { kind: 'check', id: 'heater-glow', value: 'glowing' },
      { kind: 'check', id: 'fuse-continuity', value: 'continuous' },
    ]);
    expect(total).toBeGreaterThan(1500);
    for (const [cause, p] of exact) expect(Math.abs((kept.get(cause) ?? 0) / total - p)).toBeLessThan(0.05);
  });

  it('does not care about order or repetition, passes over what the board does not have, and is the prior for nothing', () => {
    const [board] = BOARDS as [string];
    const findings = findingsOf(board, 4);
    const once = demoWorld.truePosterior(board, findings);
    const again = demoWorld.truePosterior(board, [...findings].reverse().concat(findings));
    const more = demoWorld.truePosterior(board, [...findings, { kind: 'check', id: 'lens-inspected', value: 'dirty' }]);
    for (const [cause, p] of once) {
      expect(again.get(cause)).toBeCloseTo(p, 12);
      expect(more.get(cause)).toBeCloseTo(p, 12);
    }
    const nothing = demoWorld.truePosterior(board, []);
    for (const [cause, p] of demoWorld.prior(board)) expect(nothing.get(cause)).toBeCloseTo(p, 12);
  });

  it('takes a symptom that could be seen as word that nothing hid it', () => {
    const board = 'quellbrook-8-rev-a';
    const grey: Finding = { kind: 'symptom', id: 'grey-screen', value: 'present' };
    const hiders = demoWorld.vocabulary.symptoms.find((symptom) => symptom.slug === 'grey-screen')?.hiddenBy ?? [];
    const spelled = [grey, ...hiders.map((id): Finding => ({ kind: 'symptom', id, value: 'absent' }))];
    expect(hiders).toContain('no-power');
    const explicit = demoWorld.truePosterior(board, spelled);
    for (const [cause, p] of demoWorld.truePosterior(board, [grey])) expect(explicit.get(cause)).toBeCloseTo(p, 12);
  });

  it('refuses two values of one observable and an outcome that the check does not have', () => {
    const [board] = BOARDS as [string];
    const at = (value: string): Finding => ({ kind: 'check', id: 'rail-5v', value });
    expect(() => demoWorld.truePosterior(board, [at('low'), at('high')])).toThrow('Two values');
    expect(() => demoWorld.truePosterior(board, [at('purple')])).toThrow('no outcome purple');
  });
});

describe('drawUnit', () => {
  it('answers the same question the same way, in whatever order it is asked', () => {
    const numbers = demoFaultWorld.numbers('ormadic-duo-rev-1');
    const [a, b] = [unitWithWay(numbers, 5, 77), unitWithWay(numbers, 5, 77)];
    const checks = [...numbers.checks.keys()];
    const fixes = [...numbers.fixes.keys()];
    const forward = [...checks.map((slug) => a.check(slug)), ...fixes.map((slug) => a.fix(slug))];
    const back = [
      ...[...fixes].reverse().map((slug) => b.fix(slug)),
      ...[...checks].reverse().map((slug) => b.check(slug)),
    ].reverse();
    expect(back).toEqual(forward);
  });

  it('leaves out a symptom that a present one hides, and only those', () => {
    const board = 'quellbrook-8-rev-a';
    const hiders = new Map(demoWorld.vocabulary.symptoms.map((symptom) => [symptom.slug, symptom.hiddenBy]));
    const random = seededRandom(5);
    for (let i = 0; i < 200; i += 1) {
      const unit = demoWorld.drawUnit(random, board);
      const shown = new Set(unit.symptoms.filter((each) => each.present).map((each) => each.symptom));
      const listed = new Set(unit.symptoms.map((each) => each.symptom));
      for (const [symptom] of demoFaultWorld.numbers(board).symptoms) {
        const hidden = hiders.get(symptom)?.some((hider) => shown.has(hider)) ?? false;
        if (hidden) expect(listed.has(symptom)).toBe(false);
      }
      expect(listed.has('no-power')).toBe(true);
    }
  });

  it('gives the prior back when causes are counted', () => {
    const board = 'tessaly-pocket-rev-1';
    const random = seededRandom(3);
    const counts = new Map<string, number>();
    for (let i = 0; i < 20_000; i += 1) {
      const { cause } = demoWorld.drawUnit(random, board);
      counts.set(cause, (counts.get(cause) ?? 0) + 1);
    }
    // Four standard errors of a share p over 20,000 draws.
    for (const [cause, p] of demoWorld.prior(board)) {
      expect(Math.abs((counts.get(cause) ?? 0) / 20_000 - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / 20_000) + 1e-4);
    }
  });
});

describe('drawCases', () => {
  let cases: ReturnType<typeof demoWorld.drawCases> = [];
  beforeAll(() => {
    cases = demoWorld.drawCases(7, 1000);
  });

  it('draws the same cases from the same seed, others from another', () => {
    expect(demoWorld.drawCases(7, 60)).toEqual(cases.slice(0, 60));
    expect(demoWorld.drawCases(8, 60)).not.toEqual(cases.slice(0, 60));
  });

  it('draws cases that fit the schema, the vocabulary and the catalogue', () => {
    const checks = new Map(demoWorld.vocabulary.checks.map((check) => [check.slug, check]));
    const roles = new Map(demoWorld.vocabulary.causes.map((cause) => [cause.slug, cause.role]));
    const misfits = cases.filter(({ content, board }) => {
      const { device, board: place } = demoFaultWorld.place(board);
      const parts = new Map(place.parts.map((part) => [part.designator, part]));
      const stepsFit = content.steps.every((step) => {
        if (step.kind === 'fix') return true;
        const check = checks.get(step.check);
        const outcomeFits = check?.outcomes.some((outcome) => outcome.slug === step.outcome) ?? false;
        const partFits = step.designator === null || parts.get(step.designator)?.role === check?.targetRole;
        return outcomeFits && partFits && !place.impossibleChecks.includes(step.check);
      });
      const causesFit = content.causes.every((one) => one.designators.every((d) => parts.get(d)?.role === roles.get(one.cause)));
      const readingsFit = content.readings.every((reading) => Number(reading.pin) <= (parts.get(reading.designator)?.pins ?? 0));
      const deviceFits = content.device === board || content.device === device.slug;
      return !(caseContentSchema.safeParse(content).success && stepsFit && causesFit && readingsFit && deviceFits);
    });
    expect(misfits).toEqual([]);
  });

  it('writes down numbers that the check turns into the outcome beside them', () => {
    const checks = new Map(demoWorld.vocabulary.checks.map((check) => [check.slug, check]));
    const numbers = cases
      .flatMap(({ content }) => content.steps)
      .flatMap((step) => (step.kind === 'check' && step.value !== null ? [step] : []));
    expect(numbers.length).toBeGreaterThan(200);
    for (const step of numbers) {
      const value = step.value as number;
      const band = checks
        .get(step.check)
        ?.rule?.bands.find((b) => (b.min === null || value >= b.min) && (b.max === null || value < b.max));
      expect(band?.outcome, `${step.check} ${value}`).toBe(step.outcome);
    }
  });

  it('mixes endings, proofs, complete lists, failed attempts and model-level devices as a real casebook does', () => {
    const share = (test: (one: (typeof cases)[number]) => boolean) => cases.filter(test).length / cases.length;
    const unsolved = share(
      ({ content }) => content.outcome === 'unresolved' || content.outcome === 'not-economical' || content.causes.length > 1,
    );
    expect(unsolved).toBeGreaterThan(0.03);
    expect(unsolved).toBeLessThan(0.1);
    expect(share(({ content }) => content.symptomsComplete)).toBeCloseTo(0.6, 1);
    expect(share(({ content, board }) => content.device !== board)).toBeCloseTo(0.05, 1);
    expect(share(({ content }) => content.steps.some((step) => step.kind === 'fix' && step.result !== 'cured'))).toBeGreaterThan(
      0.25,
    );
    for (const proof of ['substitution', 'measurement', 'repair-held', 'suspected']) {
      expect(share(({ content }) => content.proof === proof)).toBeGreaterThan(0.04);
    }
    expect(
      share(({ content, trueCause }) => content.causes.length === 0 || content.causes[0]?.cause === trueCause),
    ).toBeGreaterThan(0.92);
    expect(share(({ content }) => content.provedByStep !== null)).toBeGreaterThan(0.1);
  });
});

describe('drawWorkingUnits', () => {
  it('draws records that fit the schema, pins of parts on the board, the same from the same seed', () => {
    const units = demoWorld.drawWorkingUnits(3, 80);
    expect(demoWorld.drawWorkingUnits(3, 80)).toEqual(units);
    units.forEach((unit) => {
      workingUnitSchema.parse({ id: 'aaaaaaaaaaaaaaaa', ...unit });
      const parts = new Map(demoFaultWorld.place(unit.device).board.parts.map((part) => [part.designator, part]));
      for (const { designator, pin } of unit.readings) expect(Number(pin)).toBeLessThanOrEqual(parts.get(designator)?.pins ?? 0);
    });
  });

  it('agrees from unit to unit about what a pin usually does, with odd ones among them', () => {
    const units = demoWorld.drawWorkingUnits(4, 300);
    const supply = units.flatMap((unit) => {
      const parts = new Map(demoFaultWorld.place(unit.device).board.parts.map((part) => [part.designator, part]));
      return unit.readings.filter((reading) => parts.get(reading.designator)?.pinNames[Number(reading.pin) - 1] === 'VCC');
    });
    const high = supply.filter((reading) => reading.state === 'high' || (reading.value ?? 0) > 4).length;
    expect(high / supply.length).toBeGreaterThan(0.9);
    expect(high / supply.length).toBeLessThan(1);
  });
});

describe('the catalogue', () => {
  it('fits its schema, names roles of the vocabulary only, and shares parts between models', () => {
    catalogueSchema.parse(demoWorld.catalogue);
    const roles = new Set(demoWorld.vocabulary.roles.map((role) => role.slug));
    const models = new Map<string, Set<string>>();
    for (const model of demoWorld.catalogue.models) {
      for (const part of model.boards.flatMap((board) => board.parts)) {
        expect(roles.has(part.role)).toBe(true);
        if (part.partNumber === null) continue;
        const key = `${part.role} ${part.partNumber}`;
        models.set(key, (models.get(key) ?? new Set()).add(model.slug));
      }
    }
    expect(demoWorld.catalogue.models.length).toBeGreaterThanOrEqual(5);
    expect([...models.values()].filter((each) => each.size > 1).length).toBeGreaterThan(20);
  });

  it('covers every cause of the vocabulary on some board', () => {
    const covered = new Set(demoFaultWorld.boards.flatMap((board) => [...demoWorld.prior(board).keys()]));
    expect(demoWorld.vocabulary.causes.map((cause) => cause.slug).filter((slug) => !covered.has(slug))).toEqual([]);
  });
});
