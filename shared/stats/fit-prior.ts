import { boardsByPart, carryRate, type PriorStep, priorSteps } from './cause-prior';
import { addRecord, type Counts, retractRecord } from './counts';
import { devicePath } from './findings';
import { CONCENTRATIONS, nearest } from './fit-concentrations';
import type { CodedRecord } from './layout';
import type { Settings } from './settings';
import { walkDown } from './walk-down';

/** One record taken out: every cause's steps, and which are its own. */
type Sample = { steps: PriorStep[][]; impossible: boolean[]; own: number[] };

const IMPOSSIBLE_FACTORS = [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];

/**
 * Fits the concentrations of the prior by exact leave-one-out likelihood of each record's cause given its device alone
 * (which for one step is the Dirichlet-multinomial marginal likelihood up to its last term), coordinate by coordinate.
 */
export function fitPrior(counts: Counts, settings: Settings, records: readonly CodedRecord[]): Settings {
  const samples = collectSamples(counts, settings, records);
  if (samples.length === 0) return settings;
  const prior: Settings['prior'] = { ...settings.prior, levels: [...settings.prior.levels] };
  const fit = (set: (value: number) => void, candidates: readonly number[], start: number) => {
    const best = walkDown(candidates.length, start, (i) => {
      set(candidates[i] as number);
      return logLoss(samples, prior);
    });
    set(candidates[best] as number);
  };
  const deep = samples.some((sample) => (sample.steps[0] as PriorStep[]).length > 1);
  for (let sweep = 0; sweep < 2; sweep += 1) {
    fit((x) => { prior.root = x; }, CONCENTRATIONS, nearest(prior.root));
    if (!deep) break;
    for (const level of [3, 2, 1, 0] as const) {
      fit((x) => { prior.levels[level] = x; }, CONCENTRATIONS, nearest(prior.levels[level]));
    }
    fit((x) => { prior.part = x; }, CONCENTRATIONS, nearest(prior.part));
    fit((x) => { prior.impossible = x; }, IMPOSSIBLE_FACTORS, Math.max(0, IMPOSSIBLE_FACTORS.indexOf(prior.impossible)));
  }
  return { ...settings, prior };
}

function collectSamples(counts: Counts, settings: Settings, records: readonly CodedRecord[]): Sample[] {
  const { layout } = counts;
  const C = layout.causeCount;
  const boardsOfPart = boardsByPart(layout);
  const samples: Sample[] = [];
  for (const record of records) {
    if (record.causes.length === 0) continue;
    retractRecord(counts, record);
    const known: number[] = [];
    for (let c = 0; c < C; c += 1) if (!settings.unlisted || (counts.causeRecords[c] as number) > 0) known.push(c);
    const own = record.causes.map((cause) => known.indexOf(cause)).filter((at) => at >= 0);
    if (own.length > 0) {
      const path = devicePath(layout, record.device);
      samples.push({
        steps: known.map((cause) => priorSteps(counts, { boardsOfPart, path, cause })),
        impossible: known.map((cause) => layout.impossible?.[record.device * C + cause] === 1),
        own,
      });
    }
    addRecord(counts, record);
  }
  return samples;
}

function logLoss(samples: readonly Sample[], limits: Settings['prior']): number {
  let loss = 0;
  for (const { steps, impossible, own } of samples) {
    const start = 1 / steps.length;
    let total = 0;
    const shares = steps.map((of, i) => {
      const { share } = carryRate(of, { start, limits, impossible: impossible[i] as boolean });
      total += share;
      return share;
    });
    for (const i of own) loss -= Math.log((shares[i] as number) / total) / own.length;
  }
  return loss;
}
