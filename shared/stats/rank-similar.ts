import { bestFirst, createBestRows, offerRow } from './best-rows';
import { devicePath, distinctFindings, flatValue } from './findings';
import type { CodedFinding } from './layout';
import type { QueryFinding } from './matching-counts';
import { isLive, type RecordIndex, scratchOf } from './record-index';
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
  term?: (row: number) => number;
};

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
  const gains = (options.gains ? known : findings).map((finding) => ({ finding, gain: options.gains?.(finding) ?? defaultGain(index, finding, options.weights) }));
  const best = createBestRows(options.limit ?? 10);
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  const near = deviceGains(index, query.device ?? 0);
  const term = options.term ?? ((row: number) => near[index.device[row] as number] as number);
  const offer = (row: number, score: number) => {
    if (isLive(index, row)) offerRow(best, row, score + term(row), order);
  };
  if (findings.length > 0) scoreRows(index, gains, offer);
  else offerDevice(index, near, offer);
  return bestFirst(best, order).map((hit) => describeRow(index, { ...hit, findings }));
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
function offerDevice(index: RecordIndex, gains: Float64Array, offer: (row: number, score: number) => void): void {
  for (let row = 0; row < index.rows; row += 1) if ((gains[index.device[row] as number] as number) > 0) offer(row, 0);
}

type FindingGain = { finding: QueryFinding; gain: Float64Array };

/**
 * Adds up gains over the lists of the stated findings, then what other values of the same observables gain (which is
 * less than nothing where they contradict) on rows where something is shared; then offers every row that shares something.
 */
function scoreRows(index: RecordIndex, gains: readonly FindingGain[], offer: (row: number, score: number) => void): void {
  const { rows, score, mark } = scratchOf(index);
  let met = 0;
  for (const { finding, gain } of gains) {
    const list = index.byValue[flatValue(index.layout, finding)];
    if (list === undefined || finding.implied === true) continue;
    met = addWeight({ list, weight: gain[finding.value] as number, rows, score, mark, met });
  }
  for (const { finding, gain } of gains) {
    const start = index.layout.valueStarts[finding.observable] as number;
    gain.forEach((weight, there) => {
      const list = index.byValue[start + there];
      const isCounted = there === finding.value && finding.implied !== true;
      if (list !== undefined && weight !== 0 && !isCounted) addWhereMet({ list, weight, score, mark });
    });
  }
  for (let i = 0; i < met; i += 1) {
    const row = rows[i] as number;
    offer(row, score[row] as number);
    score[row] = 0;
    mark[row] = 0;
  }
}

type Adding = { list: { rows: Uint32Array; length: number }; weight: number; rows: Uint32Array; score: Float64Array; mark: Uint8Array; met: number };

function addWeight({ list, weight, rows, score, mark, met }: Adding): number {
  let count = met;
  for (let i = 0; i < list.length; i += 1) {
    const row = list.rows[i] as number;
    score[row] = (score[row] as number) + weight;
    if (mark[row] === 0) {
      mark[row] = 1;
      rows[count] = row;
      count += 1;
    }
  }
  return count;
}

function addWhereMet({ list, weight, score, mark }: Pick<Adding, 'list' | 'weight' | 'score' | 'mark'>): void {
  for (let i = 0; i < list.length; i += 1) {
    const row = list.rows[i] as number;
    if (mark[row] === 1) score[row] = (score[row] as number) + weight;
  }
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
