import type { Random } from '../../../seed/world';
import type { CaseContent, CaseStep, FixResult } from '../../../shared/schemas/case';
import type { Check, Fix, NumberRule } from '../../../shared/schemas/vocabulary';
import type { DrawnUnit } from '../draw-unit';
import { type BoardModel, boardModel } from '../model/fault-model';
import { Evidence } from '../posterior';
import { chooseCheck, chooseFix, drawRepairer, type Repairer, suspicion } from './repairer';

export type NotedSymptoms = Pick<CaseContent, 'symptoms' | 'symptomsComplete'>;

/** How a repair went. `cured` holds the fixes that did it. */
export type Repair = {
  model: BoardModel;
  noted: NotedSymptoms;
  steps: CaseStep[];
  ending: 'cured' | 'partly' | 'nothing-found' | 'given-up';
  cured: Fix[];
  /** Suspicion before the last fix, per cause of the model. */
  suspects: Float64Array;
};

/** Share of repairers who list every symptom. */
const COMPLETE = 0.6;

/** What the repairer writes down of what the owner sees; an incomplete list leaves out some of what is present. */
export function noteSymptoms(random: Random, unit: DrawnUnit): NotedSymptoms {
  const symptomsComplete = random() < COMPLETE;
  const keep = symptomsComplete ? 1 : 0.78;
  const present = unit.symptoms.filter((seen) => seen.present && random() < keep);
  const absent = unit.symptoms.filter((seen) => !seen.present && random() < 0.035);
  return { symptoms: [...present, ...absent], symptomsComplete };
}

function valueFor(random: Random, rule: NumberRule, outcome: string): number | null {
  const bands = rule.bands.filter((band) => band.outcome === outcome);
  const band = bands[Math.floor(random() * bands.length)];
  if (!band) return null;
  const low = band.min ?? (band.max! > 0 ? band.max! * 0.3 : band.max! * 1.2);
  const high = band.max ?? (band.min! > 0 ? band.min! * 1.5 : 0);
  const value = Number((low + (high - low) * (0.05 + 0.9 * random())).toPrecision(7));
  return value >= low && value < high ? value : null;
}

/** Several fixes in one attempt count by the best that happened. */
const together = (results: readonly FixResult[]): FixResult =>
  (['cured', 'partly', 'made-worse', 'symptom-changed'] as const).find((result) => results.includes(result)) ?? 'no-change';

/** One run at the bench: everything the repairer decides comes from `evidence`, which holds recorded findings only. */
class Bench {
  readonly steps: CaseStep[] = [];
  readonly checked = new Set<string>();
  readonly tried = new Set<string>();
  readonly evidence: Evidence;
  fixesDone = 0;

  constructor(
    readonly random: Random,
    readonly unit: DrawnUnit,
    readonly model: BoardModel,
    readonly repairer: Repairer,
    noted: NotedSymptoms,
  ) {
    const listed = new Map(noted.symptoms.map(({ symptom, present }) => [symptom, present]));
    const taken = noted.symptomsComplete ? new Map(model.order.slugs.map((slug) => [slug, listed.get(slug) ?? false])) : listed;
    this.evidence = new Evidence(model).addSymptoms(taken);
  }

  suspects(): Float64Array {
    return suspicion(this.repairer, this.evidence);
  }

  perform(check: Check): void {
    if (this.checked.has(check.slug)) return;
    this.checked.add(check.slug);
    const outcome = this.unit.check(check.slug);
    const value = check.rule && this.random() < 0.5 ? valueFor(this.random, check.rule, outcome) : null;
    this.steps.push({
      kind: 'check',
      check: check.slug,
      outcome,
      designator: null,
      value,
      unit: value === null ? null : check.rule!.unit,
    });
    this.evidence.addCheck(check.slug, outcome);
  }

  nextCheck(): boolean {
    const chosen = chooseCheck(this.random, this.repairer, { suspects: this.suspects(), done: this.checked });
    if (!chosen) return false;
    for (const slug of chosen.prerequisites) {
      const first = this.model.checks.find((check) => check.slug === slug);
      if (first && this.random() < 0.6) this.perform(first);
    }
    this.perform(chosen);
    return true;
  }

  attempt(): { fixes: Fix[]; result: FixResult } | null {
    const choose = () => chooseFix(this.random, this.repairer, this.model, { suspects: this.suspects(), done: this.tried });
    const first = choose();
    if (!first) return null;
    this.tried.add(first.slug);
    const second = this.random() < 0.06 ? choose() : null;
    if (second) this.tried.add(second.slug);
    const fixes = second ? [first, second] : [first];
    const result = together(fixes.map((fix) => this.unit.fix(fix.slug)));
    this.steps.push({ kind: 'fix', fixes: fixes.map((fix) => ({ fix: fix.slug, designator: null })), result });
    this.fixesDone += 1;
    if (fixes.length === 1 || result === 'no-change') for (const fix of fixes) this.evidence.addFix(fix.slug, result);
    return { fixes, result };
  }
}

/** A repair of the unit by a drawn repairer, from the first look to the end, whatever end it comes to. */
export function repair(random: Random, unit: DrawnUnit): Repair {
  const model = boardModel(unit.board);
  const repairer = drawRepairer(random, model);
  const noted = noteSymptoms(random, unit);
  const bench = new Bench(random, unit, model, repairer, noted);
  const nothing = model.causes.indexOf('no-fault-found');
  let suspects = bench.suspects();
  const end = (ending: Repair['ending'], cured: Fix[] = []): Repair => ({
    model,
    noted,
    steps: bench.steps,
    ending,
    cured,
    suspects,
  });
  let pause = 2;
  let partly = false;
  for (;;) {
    suspects = bench.suspects();
    const top = Math.max(...suspects);
    const tired = bench.checked.size >= repairer.maxChecks + 2 * bench.fixesDone;
    if (suspects[nothing] === top && bench.checked.size >= 5 && (top > repairer.boldness || tired)) return end('nothing-found');
    const ready = tired || (pause <= 0 && top > repairer.boldness);
    if (!ready && bench.nextCheck()) {
      pause -= 1;
      if (random() < 0.0015) return end('given-up');
      continue;
    }
    const attempt = bench.attempt();
    if (attempt?.result === 'cured') return end('cured', attempt.fixes);
    partly ||= attempt?.result === 'partly';
    if (partly && random() < 0.5) return end('partly');
    const worse = attempt?.result === 'made-worse' && random() < 0.35;
    if (!attempt || worse || bench.fixesDone >= repairer.maxFixes) return end(partly ? 'partly' : 'given-up');
    pause = random() < 0.75 ? 1 : 0;
  }
}
