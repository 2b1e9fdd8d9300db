import { type DeviceNearness, deviceNearness, nearnessOfAll, sharesPart } from './device-nearness';
import type { Estimator } from './estimator';
import { findingAgreement } from './finding-agreement';
import type { QueryFinding } from './matching-counts';
import type { RowTerm } from './rank-by-gain';
import type { SimilarOptions } from './rank-similar';
import type { RecordIndex } from './record-index';
import { forEachCause } from './record-words';
import type { SimilarityWeights } from './similarity-weights';

/** What speaks for a record besides its findings; each is said to the reader. */
export type RecordReasons = { nearness: DeviceNearness; sharesPart: boolean };

/** The reasons of one record for a question on this device; 0 is any device. */
export function recordReasons(index: RecordIndex, device: number, row: number): RecordReasons {
  const there = index.device[row] as number;
  const nearness = deviceNearness(index.layout, device, there);
  return { nearness, sharesPart: nearness !== 'same-board' && hasPartOf(index, device, row) };
}

/** Whether a part that was at fault in a record sits on the board asked about, too. */
function hasPartOf(index: RecordIndex, device: number, row: number): boolean {
  if (device <= 0) return false;
  const there = index.device[row] as number;
  let isShared = false;
  forEachCause(index, row, (cause) => {
    isShared ||= sharesPart(index.layout, { asked: device, there, cause });
  });
  return isShared;
}

type Asked = { index: RecordIndex; device: number; weights: SimilarityWeights };

/**
 * How records are scored for a question: findings by their agreement under the casebook's own P(value | cause), and per
 * record the nearness of its device, the shared part, the proof and its length. The sum is over shared findings, with a
 * term that stands for each record by itself.
 */
export function similarityTerms(
  estimator: Pick<Estimator, 'prior' | 'outcomeTable'>,
  { index, device, weights }: Asked,
): Required<Pick<SimilarOptions, 'gains' | 'term'>> {
  const prior = estimator.prior(device);
  return {
    gains: ({ observable, value, implied = false }: QueryFinding) => {
      const agreement = findingAgreement(prior, estimator.outcomeTable(device, observable), value);
      const against = implied ? weights.impliedContradicted : weights.contradicted;
      const alike = implied ? 0 : weights.shared;
      return agreement.map((gain, there) => gain * (there === value ? alike : against));
    },
    term: staticTerm(index, device, weights),
  };
}

/** What each record adds by itself; nearness is worked out once per device, not per record. */
function staticTerm(index: RecordIndex, device: number, weights: SimilarityWeights): RowTerm {
  const worth: Record<DeviceNearness, number> = {
    'same-board': weights.sameBoard,
    'same-model': weights.sameModel,
    'same-category': weights.sameCategory,
    other: 0,
  };
  const nearness = nearnessOfAll(index.layout, device);
  const nodeWorth = Float64Array.from(nearness, (near) => worth[near]);
  const lost = Float64Array.from({ length: 256 }, (_, findings) => weights.length * Math.log(findings || 1));
  const needsPart = weights.sharesPart !== 0 && device > 0;
  return {
    of: (row) => {
      const node = index.device[row] as number;
      const part = needsPart && nearness[node] !== 'same-board' && hasPartOf(index, device, row) ? weights.sharesPart : 0;
      return (nodeWorth[node] as number) + part + (weights.proof[proofOf(index, row)] ?? 0) - (lost[index.lengths[row] as number] as number);
    },
    most: Math.max(...nodeWorth) + Math.max(0, weights.sharesPart) + Math.max(0, ...weights.proof),
  };
}

/** Index of the schema's proofs; -1 for none. See `rowLabels`. */
function proofOf(index: RecordIndex, row: number): number {
  return ((index.labels[row] as number) & 7) - 1;
}
