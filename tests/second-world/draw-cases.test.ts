import { describe, expect, it, vi } from 'vitest';
import { vocabulary } from '../../seed/vocabulary';
import { caseContentSchema, workingUnitSchema } from '../../shared/schemas/case';
import { drawUnit } from './draw-unit';
import { knownCheck } from './model/fault-model';
import { repair } from './repairer/repair';
import { secondWorld } from './second-world';
import { seededRandom } from './seeded-random';

vi.setConfig({ testTimeout: 60_000 });

const boards = secondWorld.catalogue.models.flatMap((model) => model.boards.map((board) => ({ ...board, model: model.slug })));
const cases = secondWorld.drawCases(11, 1500);

describe('secondWorld.drawCases', () => {
  it('draws valid cases that use known slugs and parts only', () => {
    const known = new Set(
      [...vocabulary.symptoms, ...vocabulary.checks, ...vocabulary.causes, ...vocabulary.fixes].map((entry) => entry.slug),
    );
    for (const { content, board, trueCause } of cases) {
      caseContentSchema.parse(content);
      const { model, parts } = boards.find((entry) => entry.slug === board)!;
      expect([board, model]).toContain(content.device);
      const steps = content.steps.flatMap((step) =>
        step.kind === 'check' ? [step.check] : step.fixes.map((entry) => entry.fix),
      );
      const slugs = [
        trueCause,
        ...content.symptoms.map((s) => s.symptom),
        ...steps,
        ...content.causes.map((c) => c.cause),
        ...content.afterRepairChecks,
      ];
      expect(slugs.filter((slug) => !known.has(slug))).toEqual([]);
      for (const step of content.steps) {
        if (step.kind === 'check') expect(knownCheck(step.check).outcomes.map((outcome) => outcome.slug)).toContain(step.outcome);
      }
      const designators = new Set(parts.map((part) => part.designator));
      expect(
        [...content.readings, ...content.causes.flatMap((c) => c.designators.map((designator) => ({ designator })))].filter(
          (r) => !designators.has(r.designator),
        ),
      ).toEqual([]);
    }
  });

  it('keeps every number within the band of its outcome', () => {
    const numbered = cases.flatMap(({ content }) =>
      content.steps.flatMap((step) => (step.kind === 'check' && step.value !== null ? [step] : [])),
    );
    expect(numbered.length).toBeGreaterThan(500);
    for (const step of numbered) {
      const rule = knownCheck(step.check).rule!;
      expect(step.unit).toBe(rule.unit);
      const band = rule.bands.find((entry) => step.value! >= (entry.min ?? -Infinity) && step.value! < (entry.max ?? Infinity));
      expect(band?.outcome).toBe(step.outcome);
    }
  });

  it('is the same for a seed and another for another seed', () => {
    expect(secondWorld.drawCases(11, 40)).toEqual(cases.slice(0, 40));
    expect(secondWorld.drawCases(12, 40)).not.toEqual(cases.slice(0, 40));
  });

  it('has realistic shares of open ends, failed first attempts, complete lists and proofs', () => {
    const share = (test: (content: (typeof cases)[number]['content']) => boolean) =>
      cases.filter(({ content }) => test(content)).length / cases.length;
    const open = share((c) => c.outcome === 'unresolved' || c.outcome === 'not-economical');
    expect(open).toBeGreaterThan(0.05);
    expect(open).toBeLessThan(0.085);
    const failedFirst = share(
      (c) => c.steps.find((step) => step.kind === 'fix')?.result !== 'cured' && c.steps.some((step) => step.kind === 'fix'),
    );
    expect(failedFirst).toBeGreaterThan(0.15);
    expect(failedFirst).toBeLessThan(0.4);
    expect(share((c) => c.symptomsComplete)).toBeCloseTo(0.6, 1);
    for (const proof of ['substitution', 'measurement', 'repair-held', 'suspected'])
      expect(share((c) => c.proof === proof)).toBeGreaterThan(0.1);
    expect(share((c) => c.provedByStep !== null)).toBeGreaterThan(0.2);
    const months = new Set(cases.map(({ content }) => content.month));
    expect(months.size).toBeGreaterThan(90);
    expect(months.size).toBeLessThanOrEqual(96);
  });

  it('states the true cause mostly, not always', () => {
    const named = cases.filter(({ content }) => content.outcome === 'resolved');
    const right = named.filter(({ content, trueCause }) => content.causes[0]!.cause === trueCause).length / named.length;
    expect(right).toBeGreaterThan(0.8);
    expect(right).toBeLessThan(0.98);
  });

  it('lets the repairer decide from findings alone: a unit that answers alike but names another cause is repaired alike', () => {
    for (let i = 0; i < 50; i += 1) {
      const board = boards[i % boards.length]!.slug;
      const unit = drawUnit(seededRandom(i), board);
      const mask = { ...unit, cause: 'no-fault-found', picture: 'nothing' as const, powered: !unit.powered };
      expect(repair(seededRandom(900 + i), mask).steps).toEqual(repair(seededRandom(900 + i), unit).steps);
    }
  });
});

describe('secondWorld.drawWorkingUnits', () => {
  it('draws valid readings, the same for a seed', () => {
    const units = secondWorld.drawWorkingUnits(3, 60);
    for (const unit of units) workingUnitSchema.parse({ id: 'a'.repeat(16), ...unit });
    expect(secondWorld.drawWorkingUnits(3, 60)).toEqual(units);
  });
});
