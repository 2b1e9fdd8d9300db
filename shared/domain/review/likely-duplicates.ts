import type { CaseContent } from '../../schemas/case';
import { flatValue } from '../../stats/findings';
import { rankSimilar } from '../../stats/rank-similar';
import type { CasebookModel } from '../casebook/casebook-model';
import type { Coding } from '../coding/coding';
import { encodeCase } from '../coding/encode-case';
import { resemblance, shinglesOf } from './text-resemblance';

/** How near two devices are: the same board, or one of them without its board named; the same model; else. */
export type DeviceNearness = 'same' | 'model' | 'other';

/** Why two cases look like one repair told twice. Shares are 0 to 1. */
export type Likeness = {
  similarity: number;
  /** Resemblance of the wording; null where one of them has none. */
  wording: number | null;
  /** Share of the findings and causes that are the same, rare ones weighing more; and how many of how many. */
  findings: number;
  shared: number;
  all: number;
  device: DeviceNearness;
  sameMonth: boolean;
  sameCause: boolean;
  /** Designators that both name. */
  parts: string[];
};

/** A case ready to be compared. */
export type ComparedCase = { content: CaseContent; stated: ReadonlySet<number>; words: ReadonlySet<string>; parts: ReadonlySet<string> };

/** What an accepted case must reach to be shown as a likely duplicate; see tests/measure/duplicates.ts. */
export const LIKELY_DUPLICATE = 0.42;
/** Cases of the casebook that are compared in full: the first by their findings. */
export const DUPLICATE_CANDIDATES = 40;

const DEVICE_FACTOR: Record<DeviceNearness, number> = { same: 1, model: 0.9, other: 0.6 };

/** Ids of the accepted cases most like this one by what was found, by the posting lists alone; itself left out. */
export function duplicateCandidates(model: CasebookModel, id: string, content: CaseContent): string[] {
  const { device, findings } = encodeCase(model.coding, content);
  const stated = findings.filter((f) => !f.implied);
  return rankSimilar(model.index, { device, findings: stated }, { limit: DUPLICATE_CANDIDATES + 1 }).flatMap(({ row }) => {
    const found = model.entries.get(row)?.id;
    return found === undefined || found === id ? [] : [found];
  });
}

/** Takes a case apart for comparing. Throws CodingError where it names what the coding does not know. */
export function comparedCase(coding: Coding, content: CaseContent): ComparedCase {
  const { findings, causes } = encodeCase(coding, content);
  const { layout } = coding;
  const causesAt = layout.valueStarts[layout.valueCounts.length] as number;
  const stated = new Set([
    ...findings.filter((f) => !f.implied).map((f) => flatValue(layout, f)),
    ...causes.map((cause) => causesAt + cause),
  ]);
  return { content, stated, words: shinglesOf(content.narrative), parts: new Set(designatorsOf(content)) };
}

/**
 * How alike two cases are as tellings of one repair: half the resemblance of their wording, half the share of their
 * findings (weighted by how rare each is among the records), less on another device. Without wording, the findings alone.
 */
export function likenessOf(model: CasebookModel, a: ComparedCase, b: ComparedCase): Likeness {
  const weigh = weights(model);
  const union = new Set([...a.stated, ...b.stated]);
  const both = [...a.stated].filter((value) => b.stated.has(value));
  const total = sum([...union].map(weigh));
  const findings = total === 0 ? 0 : sum(both.map(weigh)) / total;
  const wording = a.words.size === 0 || b.words.size === 0 ? null : resemblance(a.words, b.words);
  const device = nearness(model, a.content.device, b.content.device);
  const causes = new Set(a.content.causes.map(({ cause }) => cause));
  return {
    similarity: DEVICE_FACTOR[device] * (wording === null ? findings : (wording + findings) / 2),
    wording,
    findings,
    shared: both.length,
    all: union.size,
    device,
    sameMonth: a.content.month === b.content.month,
    sameCause: b.content.causes.some(({ cause }) => causes.has(cause)),
    parts: [...a.parts].filter((part) => b.parts.has(part)).sort(),
  };
}

function nearness({ words }: CasebookModel, a: string, b: string): DeviceNearness {
  const one = words.devices.get(a);
  const two = words.devices.get(b);
  if (a === b) return 'same';
  if (!one || !two || one.model.slug !== two.model.slug) return 'other';
  return one.board === null || two.board === null ? 'same' : 'model';
}

/** A finding weighs the negative logarithm of its share among the records; so does a cause. */
function weights({ index, counts, coding }: CasebookModel): (value: number) => number {
  const causesAt = coding.layout.valueStarts[coding.layout.valueCounts.length] as number;
  return (value) => {
    const carrying = value >= causesAt ? counts.causeRecords[value - causesAt] : index.carrying[value];
    return Math.log((index.size + 2) / ((carrying ?? 0) + 1));
  };
}

function designatorsOf({ steps, causes }: CaseContent): string[] {
  const named = steps.flatMap((step) => (step.kind === 'check' ? [step.designator] : step.fixes.map((fix) => fix.designator)));
  return [...named, ...causes.flatMap((cause) => cause.designators)].filter((part) => part !== null);
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);
