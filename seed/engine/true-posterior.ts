import { FIX_RESULTS } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import { type BoardModel, wayCount, wayPrior } from './board-model';

/**
 * Exact P(cause | findings) under a board's model: the hidden way of failing and each fix's donor are summed out.
 *
 * Only the values of the stated findings count. What was not recorded is marginalised, and *that* something was checked
 * carries nothing. A symptom hidden by a present one is missing; so one that is stated, present or absent, could be seen,
 * and what would have hidden it was absent.
 * Findings about things the model of this board does not have are passed over, a repeated finding counts once.
 * Returns every cause of the board, summing to 1. Throws where an outcome is not one of the check's, where one observable
 * is given two different values, or where the findings are impossible under the model.
 */
export function truePosterior(model: BoardModel, findings: readonly Finding[]): Map<string, number> {
  const weights = logWayWeights(model, findings);
  const highest = weights.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  if (highest === Number.NEGATIVE_INFINITY) throw new Error('The findings are impossible under the fault model.');
  const sums = new Float64Array(model.causes.length);
  let total = 0;
  for (let way = 0; way < weights.length; way += 1) {
    const p = Math.exp((weights[way] as number) - highest);
    sums[model.wayCause[way] as number]! += p;
    total += p;
  }
  return new Map(model.causes.map((cause, index) => [cause, (sums[index] as number) / total]));
}

/** ln P(way, findings) per way. */
function logWayWeights(model: BoardModel, findings: readonly Finding[]): Float64Array {
  const weights = wayPrior(model).map(Math.log);
  const seen = new Map<string, string>();
  for (const finding of withImpliedAbsences(model, findings)) {
    const key = `${finding.kind} ${finding.id}`;
    const before = seen.get(key);
    if (before === finding.value) continue;
    if (before !== undefined) throw new Error(`Two values were given for ${key}: ${before} and ${finding.value}.`);
    seen.set(key, finding.value);
    const likelihood = findingLikelihood(model, finding);
    if (!likelihood) continue;
    for (let way = 0; way < weights.length; way += 1) {
      weights[way]! += Math.log(likelihood(way));
    }
  }
  return weights;
}

/** The findings, with the absence of whatever would have hidden a symptom that is stated, unless that is stated itself. */
export function withImpliedAbsences(model: BoardModel, findings: readonly Finding[]): Finding[] {
  const symptoms = findings.filter((finding) => finding.kind === 'symptom').map((finding) => finding.id);
  const hiders = new Set(symptoms.flatMap((id) => model.symptoms.get(id)?.hiddenBy ?? []));
  for (const id of hiders) if (symptoms.includes(id) || !model.symptoms.has(id)) hiders.delete(id);
  return [...findings, ...[...hiders].map((id): Finding => ({ kind: 'symptom', id, value: 'absent' }))];
}

/** P(value | way) as a function of the way; null where this board's model knows no such observable. */
export function findingLikelihood(model: BoardModel, finding: Finding): ((way: number) => number) | null {
  if (finding.kind === 'symptom') {
    const present = model.symptoms.get(finding.id)?.present;
    if (!present) return null;
    return finding.value === 'present' ? (way) => present[way] as number : (way) => 1 - (present[way] as number);
  }
  if (finding.kind === 'check') {
    const check = model.checks.get(finding.id);
    if (!check) return null;
    const outcome = check.outcomes.indexOf(finding.value);
    if (outcome < 0) throw new Error(`Check ${finding.id} has no outcome ${finding.value}.`);
    return (way) => check.table[way * check.outcomes.length + outcome] as number;
  }
  const fix = model.fixes.get(finding.id);
  if (!fix) return null;
  const result = FIX_RESULTS.indexOf(finding.value);
  return (way) => {
    const at = way * FIX_RESULTS.length + result;
    return (1 - fix.badPart) * (fix.good[at] as number) + fix.badPart * (fix.bad[at] as number);
  };
}

/** ln P(findings) under a board's model, everything else marginalised; the number of ways must be at least 1. */
export function logFindingsProbability(model: BoardModel, findings: readonly Finding[]): number {
  const weights = logWayWeights(model, findings);
  const highest = weights.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  if (wayCount(model) === 0 || highest === Number.NEGATIVE_INFINITY) return Number.NEGATIVE_INFINITY;
  return highest + Math.log(weights.reduce((sum, weight) => sum + Math.exp(weight - highest), 0));
}
