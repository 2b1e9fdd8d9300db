import { forEachBit } from './bit-set';
import { distinctFindings, flatValue } from './findings';
import type { CodedFinding } from './layout';
import type { QueryFinding } from './matching-counts';
import type { RecordIndex } from './record-index';

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

/**
 * The records most like the question, best first: the sum of the weights of shared findings, less a part of the weight
 * of contradicted ones. By default a finding weighs the negative logarithm of its share among the records, so that
 * rare findings count most. Implied findings are left out. Ties go to the lower row.
 * @param options.weights weight per flat value, in place of the default
 */
export function rankSimilar(
  index: RecordIndex,
  query: { device: number | null; findings: readonly QueryFinding[] },
  options: { limit?: number; weights?: Float64Array } = {},
): SimilarRecord[] {
  const { layout } = index;
  const findings = distinctFindings(layout, query.findings.filter((f) => f.implied !== true));
  const score = new Float64Array(index.rows.length);
  const touched = new Uint8Array(index.rows.length);
  const records = index.rows.length - index.freeRows.length;
  for (const finding of findings) {
    const start = layout.valueStarts[finding.observable] as number;
    const weight = options.weights?.[flatValue(layout, finding)] ?? rarity(index, flatValue(layout, finding), records);
    for (let v = 0; v < (layout.valueCounts[finding.observable] as number); v += 1) {
      const gain = v === finding.value ? weight : -CONTRADICTION_COST * weight;
      forEachBit(index.byValue[start + v]?.words ?? new Uint32Array(0), (row) => {
        score[row] = (score[row] as number) + gain;
        if (v === finding.value) touched[row] = 1;
      });
    }
  }
  for (let node = query.device ?? 0; node > 0; node = layout.deviceParents[node] as number) {
    forEachBit(index.byDevice[node]?.words ?? new Uint32Array(0), (row) => {
      score[row] = (score[row] as number) + DEVICE_LEVEL_GAIN;
      if (findings.length === 0) touched[row] = 1;
    });
  }
  return best(score, touched, options.limit ?? 10).map((row) => describeRow(index, { row, score: score[row] as number, findings }));
}

function rarity(index: RecordIndex, flat: number, records: number): number {
  let carrying = 0;
  forEachBit(index.byValue[flat]?.words ?? new Uint32Array(0), () => {
    carrying += 1;
  });
  return Math.log((records + 1) / (carrying + 0.5));
}

/** Rows of the highest scores, best first, kept in a short sorted list while passing over the scores once. */
function best(score: Float64Array, touched: Uint8Array, limit: number): number[] {
  const kept: number[] = [];
  for (let row = 0; row < score.length; row += 1) {
    if (touched[row] === 0) continue;
    const worst = kept[kept.length - 1];
    if (kept.length === limit && worst !== undefined && (score[worst] as number) >= (score[row] as number)) continue;
    let at = kept.length;
    while (at > 0 && (score[kept[at - 1] as number] as number) < (score[row] as number)) at -= 1;
    kept.splice(at, 0, row);
    if (kept.length > limit) kept.pop();
  }
  return kept;
}

function describeRow(
  index: RecordIndex,
  { row, score, findings }: { row: number; score: number; findings: readonly CodedFinding[] },
): SimilarRecord {
  const { layout } = index;
  const values = new Set(index.rows[row]?.values);
  const shared: CodedFinding[] = [];
  const contradicting: SimilarRecord['contradicting'] = [];
  for (const { observable, value } of findings) {
    const start = layout.valueStarts[observable] as number;
    if (values.has(start + value)) {
      shared.push({ observable, value });
      continue;
    }
    for (let there = 0; there < (layout.valueCounts[observable] as number); there += 1) {
      if (values.has(start + there)) {
        contradicting.push({ observable, value, there });
        break;
      }
    }
  }
  return { row, score, shared, contradicting };
}
