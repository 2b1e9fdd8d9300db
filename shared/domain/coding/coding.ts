import { FIX_RESULTS } from '../../schemas/case';
import type { DeviceCatalogue } from '../../schemas/device';
import type { Finding } from '../../schemas/finding';
import { DEVICE_CATEGORIES, type DeviceCategory } from '../../schemas/terms';
import type { Vocabulary } from '../../schemas/vocabulary';
import type { CodedFinding, Layout } from '../../stats/layout';
import { buildLayout } from './build-layout';
import { type DeviceNode, deviceTree } from './device-tree';
import { findHiders } from './find-hiders';

/** One observable of the layout by name: `values` are its values' names in coded order. */
export type NamedObservable = { kind: Finding['kind']; id: string; values: readonly string[]; /** Of the check or fix; 0 for a symptom. */ stage: number };

/**
 * Vocabulary and catalogue as the statistics see them: the layout, and the way between names and numbers.
 * Observables are symptoms, checks, fixes, each in vocabulary order; causes are in vocabulary order.
 */
export type Coding = {
  vocabulary: Vocabulary;
  catalogue: DeviceCatalogue;
  layout: Layout;
  observables: readonly NamedObservable[];
  causes: readonly string[];
  devices: readonly DeviceNode[];
  observableOf(kind: Finding['kind'], id: string): number | undefined;
  causeOf(slug: string): number | undefined;
  /** Node of a board or model slug. */
  deviceOf(slug: string): number | undefined;
  /** Per symptom, by number, every symptom that, when present, makes it impossible to see. Symptoms are the first observables. */
  symptomHiders: readonly (readonly number[])[];
  /** Numbers of the symptoms that can occur on a category; of all where it is null. */
  symptomsOf(category: DeviceCategory | null): readonly number[];
};

/** Names that the vocabulary or catalogue does not hold, so that what uses them cannot be coded. */
export class CodingError extends Error {
  constructor(readonly unknown: readonly string[]) {
    super(`Not in the vocabulary or catalogue: ${unknown.join(', ')}.`);
    this.name = 'CodingError';
  }
}

/** Makes the coding of a vocabulary and a catalogue. */
export function createCoding(vocabulary: Vocabulary, catalogue: DeviceCatalogue): Coding {
  const observables: NamedObservable[] = [
    ...vocabulary.symptoms.map((s) => ({ kind: 'symptom' as const, id: s.slug, values: ['absent', 'present'], stage: 0 })),
    ...vocabulary.checks.map((c) => ({ kind: 'check' as const, id: c.slug, values: c.outcomes.map((o) => o.slug), stage: c.stage })),
    ...vocabulary.fixes.map((f) => ({ kind: 'fix' as const, id: f.slug, values: FIX_RESULTS, stage: f.stage })),
  ];
  const devices = deviceTree(catalogue);
  const causes = vocabulary.causes.map((cause) => cause.slug);
  const observableNumbers = { symptom: new Map<string, number>(), check: new Map<string, number>(), fix: new Map<string, number>() };
  observables.forEach((o, i) => observableNumbers[o.kind].set(o.id, i));
  const causeNumbers = new Map(causes.map((slug, i) => [slug, i]));
  const hiders = findHiders(vocabulary.symptoms);
  const numbered = vocabulary.symptoms.map(({ categories }, number) => ({ categories, number }));
  const symptomsByCategory = new Map<DeviceCategory | null, number[]>([[null, numbered.map(({ number }) => number)]]);
  for (const category of DEVICE_CATEGORIES) {
    symptomsByCategory.set(category, numbered.filter(({ categories }) => categories.includes(category)).map(({ number }) => number));
  }
  const deviceNumbers = new Map<string, number>();
  devices.forEach((node, i) => {
    if (node.level === 'model' || node.level === 'board') deviceNumbers.set(node.slug, i);
  });
  return {
    vocabulary,
    catalogue,
    layout: buildLayout(vocabulary, devices, observables),
    observables,
    causes,
    devices,
    observableOf: (kind, id) => observableNumbers[kind].get(id),
    causeOf: (slug) => causeNumbers.get(slug),
    deviceOf: (slug) => deviceNumbers.get(slug),
    symptomHiders: vocabulary.symptoms.map(({ slug }) => (hiders.get(slug) ?? []).flatMap((hider) => observableNumbers.symptom.get(hider) ?? [])),
    symptomsOf: (category) => symptomsByCategory.get(category) ?? [],
  };
}

/** One finding in numbers, or undefined where its name or value is not in the vocabulary. */
export function encodeFinding(coding: Coding, finding: Finding): CodedFinding | undefined {
  const observable = coding.observableOf(finding.kind, finding.id);
  if (observable === undefined) return undefined;
  const value = (coding.observables[observable] as NamedObservable).values.indexOf(finding.value);
  return value < 0 ? undefined : { observable, value };
}

/** One coded finding by its names. */
export function decodeFinding(coding: Coding, coded: CodedFinding): Finding {
  const named = coding.observables[coded.observable];
  const value = named?.values[coded.value];
  if (named === undefined || value === undefined) {
    throw new RangeError(`No value ${coded.value} of observable ${coded.observable} in this coding.`);
  }
  return { kind: named.kind, id: named.id, value } as Finding;
}
