import { planOptionsSchema, struckStepSchema, type PlanOptions, type StruckStep } from '../../shared/schemas/plan';
import { instrumentSchema, needSchema, type Instrument, type Need } from '../../shared/schemas/terms';
import { allOf, firstOf, type SearchParams } from './question';

/** What the form of the plan can hold: the options, with each amount in whole and hundredths as written. */
export const DEFAULT_OPTIONS: PlanOptions = planOptionsSchema.parse({});

/** Hundredths from an amount as written (`12.50`, `12,50`); null where it is not an amount. */
export function centsFromAmount(amount: string): number | null {
  const match = /^\s*(\d{1,6})(?:[.,](\d{1,2}))?\s*$/.exec(amount);
  if (!match) return null;
  return Number(match[1]) * 100 + Number((match[2] ?? '').padEnd(2, '0') || '0');
}

function struckFromCode(code: string): StruckStep | null {
  const [kind, id] = code.split('.');
  const parsed = struckStepSchema.safeParse({ kind, id });
  return parsed.success ? parsed.data : null;
}

/** A struck step as one word of the address. */
export function struckToCode(step: StruckStep): string {
  return `${step.kind}.${step.id}`;
}

/**
 * Reads the plan's options out of an address. What is not said, or said badly, takes its default. The list
 * of what is at hand counts only where the form sent it (`own=1`): an unticked box sends nothing.
 */
export function readPlanOptions(params: SearchParams): PlanOptions {
  const hour = centsFromAmount(firstOf(params, 'hour') ?? '');
  const over = centsFromAmount(firstOf(params, 'over') ?? '');
  const listed = firstOf(params, 'own') !== null;
  const have = allOf(params, 'have');
  const pick = <T>(parse: (word: string) => { success: boolean; data?: T }): T[] =>
    have.flatMap((word) => {
      const parsed = parse(word);
      return parsed.success && parsed.data !== undefined ? [parsed.data] : [];
    });
  const parsed = planOptionsSchema.safeParse({
    hourValueCents: hour ?? undefined,
    maxStage: firstOf(params, 'stage') === null ? undefined : Number(firstOf(params, 'stage')),
    handOverCents: over ?? undefined,
    instruments: listed ? pick<Instrument>((word) => instrumentSchema.safeParse(word)) : null,
    needs: listed ? pick<Need>((word) => needSchema.safeParse(word)) : null,
    struck: allOf(params, 'strike')
      .map(struckFromCode)
      .filter((step) => step !== null)
      .slice(0, 60),
  });
  return parsed.success ? parsed.data : DEFAULT_OPTIONS;
}

/** The options as address parameters, those at their default left out; the inverse of `readPlanOptions`. */
export function planOptionPairs(options: PlanOptions): [string, string][] {
  const pairs: [string, string][] = [];
  if (options.hourValueCents !== DEFAULT_OPTIONS.hourValueCents) pairs.push(['hour', (options.hourValueCents / 100).toFixed(2)]);
  if (options.maxStage !== DEFAULT_OPTIONS.maxStage) pairs.push(['stage', String(options.maxStage)]);
  if (options.handOverCents !== DEFAULT_OPTIONS.handOverCents) pairs.push(['over', (options.handOverCents / 100).toFixed(2)]);
  if (options.instruments !== null || options.needs !== null) {
    pairs.push(['own', '1']);
    for (const word of [...(options.instruments ?? []), ...(options.needs ?? [])]) pairs.push(['have', word]);
  }
  for (const step of options.struck) pairs.push(['strike', struckToCode(step)]);
  return pairs;
}
