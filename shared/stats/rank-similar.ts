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

type Query = { device: number | null; findings: readonly QueryFinding[] };

/**
 * The records most like the question, best first: the sum of the weights of shared findings, less a part of the weight
 * of contradicted ones. By default a finding weighs the negative logarithm of its share among the records, so that
 * rare findings count most. Implied findings are left out. Ties go to the lower key.
 * @param options.weights weight per flat value, in place of the default
 */
export function rankSimilar(index: RecordIndex, query: Query, options: { limit?: number; weights?: Float64Array } = {}): SimilarRecord[] {
  const { layout } = index;
  const findings = distinctFindings(layout, query.findings.filter((f) => f.implied !== true));
  const weights = findings.map((f) => options.weights?.[flatValue(layout, f)] ?? rarity(index, flatValue(layout, f)));
  const best = createBestRows(options.limit ?? 10);
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  const gains = deviceGains(index, query.device ?? 0);
  const offer = (row: number, score: number) => {
    if (isLive(index, row)) offerRow(best, row, score + (gains[index.device[row] as number] as number), order);
  };
  if (findings.length > 0) scoreRows(index, { findings, weights }, offer);
  else offerDevice(index, gains, offer);
  return bestFirst(best, order).map((hit) => describeRow(index, { ...hit, findings }));
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

/**
 * Adds up weights over the lists of the findings, and takes off what other values of the same observables cost where
 * something is shared; then offers every row that shares something.
 */
function scoreRows(
  index: RecordIndex,
  { findings, weights }: { findings: readonly CodedFinding[]; weights: readonly number[] },
  offer: (row: number, score: number) => void,
): void {
  const { rows, score, mark } = scratchOf(index);
  let met = 0;
  findings.forEach((finding, i) => {
    const list = index.byValue[flatValue(index.layout, finding)];
    if (list !== undefined) met = addWeight({ list, weight: weights[i] as number, rows, score, mark, met });
  });
  findings.forEach(({ observable, value }, i) => {
    const start = index.layout.valueStarts[observable] as number;
    const end = index.layout.valueStarts[observable + 1] as number;
    const cost = CONTRADICTION_COST * (weights[i] as number);
    for (let flat = start; flat < end; flat += 1) {
      const list = index.byValue[flat];
      if (flat !== start + value && list !== undefined) takeOff({ list, cost, score, mark });
    }
  });
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

function takeOff({ list, cost, score, mark }: Pick<Adding, 'list' | 'score' | 'mark'> & { cost: number }): void {
  for (let i = 0; i < list.length; i += 1) {
    const row = list.rows[i] as number;
    if (mark[row] === 1) score[row] = (score[row] as number) - cost;
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
