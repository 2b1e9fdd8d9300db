import type { NextCheck } from '../../schemas/look-up';
import { nextChecks, type NextCheckResult, type RankedCheck } from '../../stats/decide/next-check';
import type { CasebookModel } from '../casebook/casebook-model';
import { checkCandidates, type OfferedCheck, poweredDone } from './check-candidates';
import { causeName } from './explain-cause';
import type { CodedQuestion } from './read-question';
import { isHazardous } from './safe-power-up';

/** Checks shown per stage. */
const PER_STAGE = 6;

/** What to check next, grouped by stage, at most six per stage, and a sentence where there is something to say. */
export function nextCheckRows(
  model: CasebookModel,
  question: CodedQuestion,
  posterior: Float64Array,
): { nextChecks: NextCheck[]; note: string | null } {
  const offered = checkCandidates(model, question);
  const powered = poweredDone(model, question);
  const result = nextChecks({ posterior, candidates: offered.map((o) => o.candidate), poweredDone: powered });
  const perStage = new Map<number, number>();
  const kept = result.offered.filter(({ candidate }) => {
    const stage = (offered[candidate] as OfferedCheck).check.stage;
    const before = perStage.get(stage) ?? 0;
    perStage.set(stage, before + 1);
    return before < PER_STAGE;
  });
  const rows = saferFirst(kept, offered).map((ranked) => row(model, offered[ranked.candidate] as OfferedCheck, ranked));
  return { nextChecks: rows, note: noteOn(model, result, powered) };
}

/** Puts the first safe check on top where hazardous work would stand there. */
function saferFirst(ranked: readonly RankedCheck[], offered: readonly OfferedCheck[]): RankedCheck[] {
  const safe = ranked.find(({ candidate }) => !isHazardous((offered[candidate] as OfferedCheck).check));
  return safe === undefined ? [...ranked] : [safe, ...ranked.filter((other) => other !== safe)];
}

function row(model: CasebookModel, { check }: OfferedCheck, ranked: RankedCheck): NextCheck {
  return {
    id: check.slug,
    label: check.label,
    howTo: check.howTo,
    stage: check.stage,
    minutes: ranked.minutes,
    bits: ranked.bits,
    bitsPerMinute: ranked.bitsPerMinute,
    cautions: check.cautions,
    instruments: check.instruments,
    risk: check.risk,
    outcomes: ranked.outcomes.map(({ value, probability, effect }) => ({
      value: check.outcomes[value]?.slug ?? '',
      label: check.outcomes[value]?.label ?? '',
      probability,
      effect: effect.map(({ cause, before, after }) => ({ ...causeName(model, cause), before, after })),
    })),
  };
}

function noteOn(model: CasebookModel, { stop, provedCause, offered }: NextCheckResult, powered: boolean): string | null {
  if (stop === 'cause-proved' && provedCause !== null) {
    return `No further check is suggested: "${causeName(model, provedCause).label}" is probable enough to act on. Prove it by the repair.`;
  }
  if (stop === 'no-check-pays') return 'No further check is suggested: none of those left would tell these causes apart.';
  if (stop === 'none-possible') return 'No further check is suggested: every check that makes sense on this device was done.';
  const safety = !powered && offered.some(({ reasons }) => reasons.includes('safe-power-up'));
  return safety ? 'Safe power-up comes first, whatever it tells about the cause.' : null;
}
