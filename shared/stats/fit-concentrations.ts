import { createCauseTallies } from './cause-tallies';
import { addRecord, COUNT_UNIT, type Counts, retractRecord } from './counts';
import { distinctFindings } from './findings';
import { createGroupShares } from './group-shares';
import { createKinCounts, type KinCount, leanOnKin } from './kin-shares';
import { CHECK, type CodedRecord } from './layout';
import { type Settings, USUAL_CLEARED, type ValueSettings } from './settings';
import { shareInState, type StateCount, stateCountOf } from './state-shares';
import { unitState } from './unit-state';
import { stepCounts, valueSteps } from './value-steps';
import { limitedWorth } from './value-shares';
import { walkDown } from './walk-down';

/** One finding of one record with the record taken out: the start of its share and its steps as [place, n_v, n]. */
type Sample = {
  observable: number;
  group: 'onTarget' | 'offTarget' | 'cleared';
  start: number;
  kin: readonly KinCount[];
  steps: Float64Array;
  /** What was counted in the unit's state, for a check where the state is known. */
  counted: StateCount | null;
  offShare: number;
  weight: number;
};

/** Concentrations tried, in records; the last stands for "no difference". */
export const CONCENTRATIONS = [0.3, 0.6, 1, 1.7, 3, 5, 8, 13, 22, 40, 80, 160, 400, 1500, 10000];

/**
 * Fits the concentrations of all shares of values by exact leave-one-out likelihood of each record's findings under
 * its own cause, coordinate by coordinate over `CONCENTRATIONS`. Changes `settings.values` and
 * `settings.concentrationFactors` in a copy.
 */
export function fitConcentrations(counts: Counts, settings: Settings, records: readonly CodedRecord[]): Settings {
  const { layout } = counts;
  const samples = collectSamples(counts, settings, records);
  const values = settings.values.map((kind, k) => {
    const own = samples.filter((sample) => layout.kinds[sample.observable] === k);
    return own.length === 0 ? kind : fitKind(own, kind);
  }) as Settings['values'];
  const factors = settings.concentrationFactors.map((factor, observable) => {
    const own = samples.filter((sample) => sample.observable === observable);
    return own.length === 0 ? factor : fitFactor(own, values[layout.kinds[observable] as number] as ValueSettings);
  });
  values[CHECK] = fitState(samples, values[CHECK], factors);
  return { ...settings, values, concentrationFactors: factors };
}

function collectSamples(counts: Counts, settings: Settings, records: readonly CodedRecord[]): Sample[] {
  const { layout } = counts;
  const tallies = createCauseTallies(counts);
  const shares = createGroupShares(counts, settings, tallies);
  const kinOf = createKinCounts(counts, tallies);
  const samples: Sample[] = [];
  for (const record of records) {
    if (record.causes.length === 0) continue;
    retractRecord(counts, record);
    for (const cause of record.causes) {
      if (counts.causeRecords[cause] === 0) continue;
      const steps = valueSteps(counts, record.device, cause);
      const state = unitState(layout, record.findings);
      for (const finding of distinctFindings(layout, record.findings)) {
        const { observable, value } = finding;
        const on = layout.onTarget[observable * layout.causeCount + cause] === 1;
        const group = shares(observable);
        const first = layout.valueStarts[observable] as number;
        const counted = new Float64Array(layout.valueCounts[observable] as number);
        const numbers = steps.flatMap((step) => {
          stepCounts(counts, step, { first, end: first + counted.length, into: counted });
          const total = counted.reduce((sum, n) => sum + n, 0);
          return [step.place, (counted[value] as number) / COUNT_UNIT, total / COUNT_UNIT];
        });
        samples.push({
          observable,
          group: on ? (layout.clearing?.[observable] === 1 ? 'cleared' : 'onTarget') : 'offTarget',
          kin: on ? [] : (kinOf(observable)?.of(cause, value) ?? []),
          start: (on ? group.on : group.off)[value] as number,
          steps: Float64Array.from(numbers),
          counted: state >= 0 && layout.kinds[observable] === CHECK ? stateCountOf(counts, { state, cause, observable, value }) : null,
          offShare: group.off[value] as number,
          weight: 1 / record.causes.length,
        });
      }
    }
    addRecord(counts, record);
  }
  return samples;
}

function logLoss(samples: readonly Sample[], kind: ValueSettings, factor: number): number {
  let loss = 0;
  for (const sample of samples) loss -= sample.weight * Math.log(shareInAllStates(sample, kind, factor).share);
  return loss;
}

function shareInAllStates({ group, start, kin, steps }: Sample, kind: ValueSettings, factor: number): { share: number; worth: number } {
  let share = kin.length === 0 ? start : leanOnKin(start, kin, { worth: kind.kin, pull: kind.group });
  let worth = factor * kind[group];
  for (let i = 0; i < steps.length; i += 3) {
    worth = limitedWorth(worth, steps[i] as number, kind);
    const total = steps[i + 2] as number;
    share = ((steps[i + 1] as number) + worth * share) / (total + worth);
    worth += total;
  }
  return { share, worth };
}

/** How far the states differ, by the likelihood of what checks showed in them; everything else as it was fitted over all states. */
function fitState(samples: readonly Sample[], kind: ValueSettings, factors: readonly number[]): ValueSettings {
  const inStates = samples.flatMap((sample) => {
    if (sample.counted === null) return [];
    const plain = shareInAllStates(sample, kind, factors[sample.observable] as number);
    return [{ plain, counted: sample.counted, on: sample.group !== 'offTarget', offShare: sample.offShare, weight: sample.weight }];
  });
  if (inStates.length === 0) return kind;
  const settings = { ...kind.state };
  const loss = () =>
    inStates.reduce((sum, { plain, counted, on, offShare, weight }) => sum - weight * Math.log(shareInState(plain, counted, { on, offShare, settings }).share), 0);
  for (let sweep = 0; sweep < 2; sweep += 1) {
    for (const name of ['offTarget', 'lean', 'onTarget'] as const) {
      const best = walkDown(CONCENTRATIONS.length, nearest(settings[name]), (i) => {
        settings[name] = CONCENTRATIONS[i] as number;
        return loss();
      });
      settings[name] = CONCENTRATIONS[best] as number;
    }
  }
  return { ...kind, state: settings };
}

function fitKind(samples: readonly Sample[], from: ValueSettings): ValueSettings {
  const kind: ValueSettings = { ...from, kin: [...from.kin], levels: [...from.levels] };
  const depth = samples.reduce((deepest, s) => Math.max(deepest, s.steps.length / 3), 0);
  const coordinates: { of: readonly Sample[]; set: (value: number) => void; value: () => number }[] = [];
  for (const group of ['cleared', 'onTarget', 'offTarget'] as const) {
    coordinates.push({ of: samples.filter((sample) => sample.group === group), set: (x) => { kind[group] = x; }, value: () => kind[group] });
  }
  const related = samples.filter((sample) => sample.kin.length > 0);
  for (const level of [0, 1] as const) {
    coordinates.push({ of: related, set: (x) => { kind.kin[level] = x; }, value: () => kind.kin[level] });
  }
  if (depth > 1) {
    coordinates.push({ of: samples, set: (x) => { kind.part = x; }, value: () => kind.part });
    for (const level of [3, 2, 1, 0] as const) {
      coordinates.push({ of: samples, set: (x) => { kind.levels[level] = x; }, value: () => kind.levels[level] });
    }
  }
  for (let sweep = 0; sweep < 2; sweep += 1) {
    for (const { of, set, value } of coordinates) {
      if (of.length === 0) continue;
      const best = walkDown(CONCENTRATIONS.length, nearest(value()), (i) => {
        set(CONCENTRATIONS[i] as number);
        // Cleared causes are met seldom, so their concentration is held near its usual value by a log-normal prior.
        return logLoss(of, kind, 1) + Math.log(kind.cleared / USUAL_CLEARED) ** 2 / 2;
      });
      set(CONCENTRATIONS[best] as number);
    }
  }
  return kind;
}

const FACTORS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16];
const FACTOR_SPREAD = 1;

/** One observable's factor on its kind's concentration, held near 1 by a log-normal prior. */
function fitFactor(samples: readonly Sample[], kind: ValueSettings): number {
  const best = walkDown(FACTORS.length, 4, (i) => {
    const factor = FACTORS[i] as number;
    return logLoss(samples, kind, factor) + Math.log(factor) ** 2 / (2 * FACTOR_SPREAD ** 2);
  });
  return FACTORS[best] as number;
}

/** Index of the candidate nearest in ratio. */
export function nearest(value: number): number {
  let best = 0;
  CONCENTRATIONS.forEach((candidate, i) => {
    if (Math.abs(Math.log(candidate / value)) < Math.abs(Math.log((CONCENTRATIONS[best] as number) / value))) best = i;
  });
  return best;
}
