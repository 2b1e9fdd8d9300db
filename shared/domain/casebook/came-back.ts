import type { CaseRecord } from '../../schemas/case';
import { readRow, statedValues } from '../../stats/record-index';
import type { Coding } from '../coding/coding';
import type { CasebookModel } from './casebook-model';
import type { FixScope } from './fix-record';

/** A cure that a later report says did not last: the row of its case, and the fixes done together, by observable. */
export type CameBack = { row: number; fixes: readonly number[] };

/** The fixes whose cure did not last, where an accepted report says so; empty otherwise. */
export function curesThatCameBack(coding: Coding, { content, afterwards }: CaseRecord): number[] {
  if (afterwards?.cameBackMonths == null) return [];
  const last = content.steps.findLast((step) => step.kind === 'fix' && step.result === 'cured');
  if (last?.kind !== 'fix') return [];
  return [...new Set(last.fixes.flatMap(({ fix }) => coding.observableOf('fix', fix) ?? []))];
}

/** Those of the model that lie in a scope of symptoms and a cause. They are few: each is looked at. */
export function cameBackIn(model: CasebookModel, { symptoms = [], cause = null }: FixScope): CameBack[] {
  const { coding, index, cameBack } = model;
  return [...cameBack.values()].filter(({ row }) => {
    const record = readRow(index, row);
    const values = statedValues(record);
    const hasSymptom = (slug: string) => {
      const observable = coding.observableOf('symptom', slug);
      return observable !== undefined && values.includes((index.layout.valueStarts[observable] as number) + 1);
    };
    return symptoms.every(hasSymptom) && (cause === null || record.causes.includes(coding.causeOf(cause) ?? -1));
  });
}
