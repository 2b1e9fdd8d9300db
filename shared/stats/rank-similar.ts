import { bestFirst, createBestRows, offerRow } from './best-rows';
import { devicePath, distinctFindings, flatValue } from './findings';
import type { CodedFinding } from './layout';
import type { QueryFinding } from './matching-counts';
import { type RowTerm, rankByGain, type ScoredRow, type ValueGain } from './rank-by-gain';
import { isLive, type RecordIndex } from './record-index';
import { compareKeys } from './record-keys';
import { states } from './record-words';

/** A record like the question: its row, its score, what both state and where they differ. */
export type SimilarRecord = {
  row: number;
  score: number;
  shared: CodedFinding[];
  contradicting: { observable: number; value: number; there: number }[];
};

/** A contradiction costs this share of what agreement would have earned. */
const CONTRADICTION_COST = 0.7;
/** What the same device adds, per level below the root, in the weight of a finding that one record in e carries. */
const DEVICE_LEVEL_GAIN = 0.15;

export type SimilarOptions = {
  limit?: number;
  /** Weight per flat value, in place of the default. */
  weights?: Float64Array;
  /** What a record's value of the finding's observable adds, one entry per value: in place of weights. */
  gains?: (finding: QueryFinding) => Float64Array;
  /** What a record adds by itself, in place of the nearness of its device: how near that is, how well its cause was proved. */
  term?: RowTerm;
};

/** Where no device is asked about, none is nearer than another. */
const NO_TERM: RowTerm = { of: () => 0, most: 0 };

type Query = { device: number | null; findings: readonly QueryFinding[] };

/**
 * The records most like the question, best first: the sum over the findings of what the record's value there gains, plus
 * the record's own term. By default a shared finding gains the negative logarithm of its share among the records, so that
 * rare findings count most, and a contradicted one costs a part of that. Only records that share a stated finding are
 * ranked; implied findings count only where `gains` says so. Ties go to the lower key.
 */
export function rankSimilar(index: RecordIndex, query: Query, options: SimilarOptions = {}): SimilarRecord[] {
  const { layout } = index;
  const known = distinctFindings(layout, query.findings);
  const findings = known.filter((f) => f.implied !== true);
  const near = deviceGains(index, query.device ?? 0);
  const nearest = near.reduce((a, b) => Math.max(a, b), 0);
  const term = options.term ?? (nearest === 0 ? NO_TERM : { of: (row: number) => near[index.device[row] as number] as number, most: nearest });
  const limit = options.limit ?? 10;
  const ranked =
    findings.length === 0
      ? nearestRows(index, { near, limit, term })
      : rankByGain(index, valueGains(index, options.gains ? known : findings, options), { limit, term });
  return ranked.map((hit) => describeRow(index, { ...hit, findings }));
}

/** What every value that says anything gains, over all findings. */
function valueGains(index: RecordIndex, findings: readonly QueryFinding[], options: SimilarOptions): ValueGain[] {
  const { valueStarts } = index.layout;
  const gains = new Map<number, ValueGain>();
  for (const finding of findings) {
    const start = valueStarts[finding.observable] as number;
    const gain = options.gains?.(finding) ?? defaultGain(index, finding, options.weights);
    gain.forEach((own, value) => {
      const asked = value === finding.value && finding.implied !== true;
      const before = gains.get(start + value);
      if (before !== undefined) gains.set(start + value, { ...before, gain: before.gain + own, asked: before.asked || asked });
      else if (own !== 0 || asked) gains.set(start + value, { flat: start + value, gain: own, asked });
    });
  }
  return [...gains.values()];
}

/** A finding's weight where it is shared, and what other values of its observable cost. */
function defaultGain(index: RecordIndex, finding: CodedFinding, weights: Float64Array | undefined): Float64Array {
  const flat = flatValue(index.layout, finding);
  const weight = weights?.[flat] ?? rarity(index, flat);
  const gain = new Float64Array(index.layout.valueCounts[finding.observable] as number).fill(-CONTRADICTION_COST * weight);
  gain[finding.value] = weight;
  return gain;
}

function rarity(index: RecordIndex, flat: number): number {
  return Math.log((index.size + 1) / ((index.carrying[flat] as number) + 0.5));
}

/** What a record on each device node gains for how near it is. */
function deviceGains({ layout }: RecordIndex, device: number): Float64Array {
  const path = devicePath(layout, device);
  const gains = new Float64Array(layout.deviceParents.length);
  for (let node = 1; node < gains.length; node += 1) {
    gains[node] = (gains[layout.deviceParents[node] as number] as number) + (path.includes(node) ? DEVICE_LEVEL_GAIN : 0);
  }
  return gains;
}

/** Where nothing was stated: records that are near by device. */
function nearestRows(index: RecordIndex, { near, limit, term }: { near: Float64Array; limit: number; term: RowTerm }): ScoredRow[] {
  const best = createBestRows(limit);
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  index.byDevice.forEach(({ rows, length }, node) => {
    if ((near[node] as number) === 0) return;
    for (let i = 0; i < length; i += 1) {
      const row = rows[i] as number;
      if (isLive(index, row)) offerRow(best, row, term.of(row), order);
    }
  });
  return bestFirst(best, order);
}

function describeRow(
  index: RecordIndex,
  { row, score, findings }: { row: number; score: number; findings: readonly CodedFinding[] },
): SimilarRecord {
  const { layout } = index;
  const shared: CodedFinding[] = [];
  const contradicting: SimilarRecord['contradicting'] = [];
  for (const { observable, value } of findings) {
    const start = layout.valueStarts[observable] as number;
    if (states(index, row, start + value)) {
      shared.push({ observable, value });
      continue;
    }
    for (let there = 0; there < (layout.valueCounts[observable] as number); there += 1) {
      if (states(index, row, start + there)) {
        contradicting.push({ observable, value, there });
        break;
      }
    }
  }
  return { row, score, shared, contradicting };
}
