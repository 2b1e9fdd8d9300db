import { Command } from 'commander';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { planRepair } from '../../../shared/domain/plan/plan-repair';
import { type PlanResult, planOptionsSchema, type StruckStep } from '../../../shared/schemas/plan';
import { INSTRUMENTS, type Instrument, NEEDS, type Need } from '../../../shared/schemas/terms';
import { loadCasebook } from '../../casebook/load-casebook';
import { CommandError, type CommandIo, printJson } from '../io';
import { amount, listOf, wholeNumber } from '../option-parsers';
import { questionOf } from '../question-of';
import { cell, table } from '../text-table';

const CENTS = 100;

type Options = {
  device?: string;
  complete?: boolean;
  hourValue: number;
  handOver: number;
  maxStage: number;
  instruments?: Instrument[];
  needs?: Need[];
  skip: string[];
  json?: boolean;
};

/** `plan "<words>"`: checks and fixes in an order with a low expected cost of repair. */
export function planCommand(io: CommandIo): Command {
  return new Command('plan')
    .description('plan the repair: checks and fixes in an order with a low expected cost, ending in "stop or hand over"')
    .argument('<words>', 'what was seen, such as "grey screen, clock present"')
    .option('--device <slug>', 'board revision or model')
    .option('--complete', 'that is all there is to see: a symptom not named is absent')
    .option('--hour-value <money>', 'what an hour of work is worth', amount(10_000), 20)
    .option('--hand-over <money>', 'what it costs to stop or to hand the unit over', amount(1_000_000), 150)
    .option('--max-stage <stage>', 'the most invasive stage that can be done, 0 to 4', wholeNumber(0, 4), 4)
    .option(
      '--instruments <list>',
      `instruments at hand, parted by commas (everything unless given): ${INSTRUMENTS.join(', ')}`,
      listOf(INSTRUMENTS),
    )
    .option('--needs <list>', `what else is at hand (everything unless given): ${NEEDS.join(', ')}`, listOf(NEEDS))
    .option(
      '--skip <step>',
      'leave a check or fix out, by slug; may be repeated',
      (slug: string, before: string[]) => [...before, slug],
      [] as string[],
    )
    .option('--json', 'print one JSON document')
    .action(async (words: string, options: Options) => {
      const { model } = await loadCasebook(io.db());
      const question = questionOf(model, words, options);
      const struck = options.skip.flatMap((id) => struckSteps(model, id));
      const plan = planRepair(
        model,
        question,
        planOptionsSchema.parse({
          hourValueCents: Math.round(options.hourValue * CENTS),
          handOverCents: Math.round(options.handOver * CENTS),
          maxStage: options.maxStage,
          instruments: options.instruments ?? null,
          needs: options.needs ?? null,
          struck,
        }),
      );
      if (options.json) printJson(io, planJson(plan));
      else io.out(planText(plan));
    });
}

/** The check and the fix of this slug. Refuses a slug that is neither. */
function struckSteps({ words }: CasebookModel, id: string): StruckStep[] {
  const steps: StruckStep[] = [];
  if (words.checks.has(id)) steps.push({ kind: 'check', id });
  if (words.fixes.has(id)) steps.push({ kind: 'fix', id });
  if (steps.length === 0) throw new CommandError(`There is no check or fix "${id}" to skip.`, 'usage');
  return steps;
}

/** The plan as the command line prints it; money in whole units, not in cents. */
export function planJson(plan: PlanResult) {
  return {
    read: {
      findings: plan.read.findings.map(({ kind, id, label, value, text }) => ({ kind, id, label, value, text })),
      unread: plan.read.unread.map((span) => span.text),
      device: plan.read.device?.slug ?? null,
    },
    steps: plan.steps.map((step) => ({
      kind: step.kind,
      id: step.id,
      label: step.label,
      stage: step.stage,
      minutes: step.minutes,
      cost: step.costCents / CENTS,
      cautions: step.cautions,
      chanceBefore: step.chanceBefore,
      chanceAfter: step.chanceAfter,
      expectedMinutesSoFar: step.expectedMinutesSoFar,
      expectedCostSoFar: step.expectedCostCentsSoFar / CENTS,
      why: step.why,
    })),
    end: { kind: plan.end.kind, cost: plan.end.costCents / CENTS, chanceLeft: plan.end.chanceLeft },
    chanceResolved: plan.chanceResolved,
    expectedMinutes: plan.expectedMinutes,
    expectedCost: plan.expectedCostCents / CENTS,
    warnings: plan.warnings,
  };
}

function planText(plan: PlanResult): string {
  const rows = plan.steps.map((step, index) => [
    `${index + 1}. ${step.label}`,
    `stage ${step.stage}`,
    `${cell(step.minutes)} min`,
    `works after: ${cell(step.chanceAfter)}`,
    step.cautions.length > 0 ? `caution: ${step.cautions.join(', ')}` : '',
  ]);
  const end = `Then stop or hand over (chance of coming to that: ${cell(plan.end.chanceLeft)}).\n`;
  const totals = `Expected: ${cell(plan.expectedMinutes)} minutes, cost ${cell(plan.expectedCostCents / CENTS)}.\n`;
  const safety = 'Mains and tube work: follow local rules and leave it to qualified people.\n';
  return [table('Plan', rows) || 'Nothing on the bench is worth its cost here.\n', end, totals, safety].join('');
}
