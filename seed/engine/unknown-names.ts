import type { Vocabulary } from '../../shared/schemas/vocabulary';
import type { FaultModel } from './fault-model';
import { readWords } from './read-notation';

/** Every name in a written fault model that the vocabulary or the model itself does not have; empty where all is well. */
export function unknownNames(model: FaultModel, vocabulary: Vocabulary): string[] {
  const symptoms = new Set(vocabulary.symptoms.map((symptom) => symptom.slug));
  const outcomes = new Set(
    vocabulary.checks.flatMap((check) => check.outcomes.map((outcome) => `${check.slug}=${outcome.slug}`)),
  );
  const causes = new Set(vocabulary.causes.map((cause) => cause.slug));
  const checks = new Set(vocabulary.checks.map((check) => check.slug));
  const fixes = new Set(vocabulary.fixes.map((fix) => fix.slug));
  const texts = [
    ...Object.values(model.states),
    model.inside,
    ...Object.values(model.causes).flatMap((cause) => [cause.always, ...cause.ways.map(([, shows]) => shows)]),
  ];
  const unknown = texts
    .map(readWords)
    .flatMap((words) => [
      ...words.states.filter((state) => model.states[state] === undefined),
      ...words.symptoms.map(([slug]) => slug).filter((slug) => !symptoms.has(slug)),
      ...[...words.checks]
        .flatMap(([check, shown]) => [...shown.keys()].map((o) => `${check}=${o}`))
        .filter((o) => !outcomes.has(o)),
    ]);
  const keys = (record: object, known: ReadonlySet<string>) =>
    Object.keys(record).filter((key) => key !== 'other' && !known.has(key));
  return [
    ...new Set([
      ...unknown,
      ...keys(model.causes, causes),
      ...keys(model.leaks, symptoms),
      ...keys(model.misreadings, checks),
      ...keys(model.fixes, fixes),
      ...Object.values(model.boards).flatMap((board) => board.without.filter((slug) => !symptoms.has(slug))),
      ...Object.values(model.boards).flatMap((board) => keys(board.factors, causes)),
    ]),
  ];
}
