import type { DeviceChoice } from '../../../../shared/schemas/case-view';
import type { FilterName } from '../../../../shared/schemas/search';
import type { Vocabulary } from '../../../../shared/schemas/vocabulary';
import { CASE_OUTCOME_WORDS, capital, PROOF_WORDS } from '../../../_components/words';

/** How the filters are called, in the order in which they stand on the page. */
export const FILTER_WORDS: Record<FilterName, string> = {
  device: 'Device',
  symptom: 'Symptom',
  cause: 'Cause',
  category: 'Kind of device',
  year: 'Year',
  outcome: 'How it ended',
  proof: 'How the cause was proved',
  photos: 'Photos',
};
export const FILTERS_SHOWN = Object.keys(FILTER_WORDS) as FilterName[];

const CLOSED: Partial<Record<FilterName, Record<string, string>>> = {
  outcome: CASE_OUTCOME_WORDS,
  proof: { ...PROOF_WORDS, none: 'cause not found' },
  photos: { yes: 'with photos', no: 'without' },
};

/** The words of a filter's value. */
export type ValueWords = (name: FilterName, value: string) => string;

/** Says every value of every filter; one that the vocabulary lacks stands as it is. */
export function valueWords(vocabulary: Vocabulary, devices: readonly DeviceChoice[]): ValueWords {
  const labels: Partial<Record<FilterName, Map<string, string>>> = {
    symptom: new Map(vocabulary.symptoms.map((s) => [s.slug, s.label])),
    cause: new Map(vocabulary.causes.map((c) => [c.slug, c.label])),
    device: new Map(devices.map((d) => [d.slug, d.level === 'model' ? `${d.label}, any board` : d.label])),
  };
  return (name, value) => labels[name]?.get(value) ?? capital(CLOSED[name]?.[value] ?? value.replaceAll('-', ' '));
}
