import type { FIX_RESULTS } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import type { BoardModel } from '../engine/board-model';
import { findingLikelihood } from '../engine/true-posterior';
import { normal } from '../random';
import type { Random } from '../world';
import type { Repairer } from './repairer';

/** P(value | cause) of every observable of a board, made when first asked for: what a bench knows by experience. */
export type Experience = {
  readonly numbers: BoardModel;
  /** Per cause, P(finding's value | cause). */
  likelihood(finding: Finding): Float64Array;
  /** Per cause, how far a check's outcomes differ from those of the other causes: 0 not at all, 1 wholly. */
  telling(check: string): Float64Array;
};

export function createExperience(numbers: BoardModel): Experience {
  const likelihoods = new Map<string, Float64Array>();
  const telling = new Map<string, Float64Array>();
  const likelihood = (finding: Finding): Float64Array => {
    const key = `${finding.kind} ${finding.id} ${finding.value}`;
    const known = likelihoods.get(key) ?? causeLikelihood(numbers, finding);
    likelihoods.set(key, known);
    return known;
  };
  return {
    numbers,
    likelihood,
    telling: (check) => {
      const known = telling.get(check) ?? differences(numbers, check, likelihood);
      telling.set(check, known);
      return known;
    },
  };
}

function causeLikelihood(numbers: BoardModel, finding: Finding): Float64Array {
  const byWay = findingLikelihood(numbers, finding);
  const sums = new Float64Array(numbers.causes.length);
  if (!byWay) return sums.fill(1);
  numbers.wayCause.forEach((cause, way) => {
    sums[cause]! += (numbers.wayShare[way] as number) * byWay(way);
  });
  return sums;
}

/** Total variation distance between a check's outcomes under each cause and under the prior. */
function differences(numbers: BoardModel, id: string, likelihood: Experience['likelihood']): Float64Array {
  const distance = new Float64Array(numbers.causes.length);
  for (const value of numbers.checks.get(id)?.outcomes ?? []) {
    const p = likelihood({ kind: 'check', id, value });
    const mean = p.reduce((sum, each, cause) => sum + each * (numbers.prior[cause] as number), 0);
    p.forEach((each, cause) => {
      distance[cause]! += Math.abs(each - mean) / 2;
    });
  }
  return distance;
}

/** What a repairer holds for likely: a rule of thumb that grows with the findings, never with the truth. */
export type Suspicion = { readonly log: Float64Array };

/** Before anything was seen: how common the faults are, as this repairer remembers it. */
export function firstSuspicion(random: Random, repairer: Repairer, experience: Experience): Suspicion {
  const log = experience.numbers.prior.map((p) => 0.7 * Math.log(p) + repairer.prejudice * normal(random));
  return { log };
}

/** One finding moves the suspicion by part of what it is worth, a fix that changed nothing by most of it. */
export function suspect(
  suspicion: Suspicion,
  finding: Finding,
  { experience, repairer }: { experience: Experience; repairer: Repairer },
): void {
  const p = experience.likelihood(finding);
  const weight = finding.kind === 'fix' ? Math.max(0.8, repairer.weight) : repairer.weight;
  p.forEach((each, cause) => {
    suspicion.log[cause]! += weight * Math.log(Math.max(each, 0.002));
  });
}

/** The suspicion as shares that sum to 1. */
export function beliefs(suspicion: Suspicion): Float64Array {
  const highest = suspicion.log.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const p = suspicion.log.map((log) => Math.exp(log - highest));
  const total = p.reduce((a, b) => a + b, 0);
  return p.map((each) => each / total);
}

/** Results in the order of harm and help, for attempts in which several fixes were done together. */
export function jointResult(results: readonly (typeof FIX_RESULTS)[number][]): (typeof FIX_RESULTS)[number] {
  for (const result of ['cured', 'made-worse', 'partly', 'symptom-changed'] as const) if (results.includes(result)) return result;
  return 'no-change';
}
