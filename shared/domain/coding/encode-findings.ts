import type { Finding } from '../../schemas/finding';
import type { CodedFinding } from '../../stats/layout';
import { type Coding, CodingError, encodeFinding } from './coding';
import { hiddenSymptoms } from './hidden-symptoms';
import { impliedAbsences } from './implied-absences';

/** A coded finding of a question; `implied` where it follows from what was stated, or from the list being complete. */
export type QuestionFinding = CodedFinding & { implied: boolean };

/**
 * A question's findings in numbers, stated ones first in their order; implied absences follow. A symptom that another stated one hides is missing. Throws CodingError naming everything that the vocabulary does not hold.
 * @param options.fine slugs of symptoms of whose subject it was said that all is well
 * @param options.device slug of a board or model, null where not known
 */
export function encodeFindings(
  coding: Coding,
  findings: readonly Finding[],
  options: { complete: boolean; device: string | null; fine?: readonly string[] },
): QuestionFinding[] {
  const unknown: string[] = [];
  const coded: QuestionFinding[] = [];
  for (const finding of findings) {
    const found = encodeFinding(coding, finding);
    if (found === undefined) unknown.push(`${finding.kind} ${finding.id} ${finding.value}`);
    else coded.push({ ...found, implied: false });
  }
  const node = options.device === null ? 0 : coding.deviceOf(options.device);
  if (node === undefined) unknown.push(`device ${options.device}`);
  if (unknown.length > 0) throw new CodingError(unknown);
  const stated = new Map<number, boolean>();
  for (const { observable, value } of coded) if (coding.observables[observable]?.kind === 'symptom') stated.set(observable, value === 1);
  const hidden = hiddenSymptoms(coding, stated);
  for (const symptom of hidden.keys()) stated.delete(symptom);
  const seen = coded.filter(({ observable }) => !hidden.has(observable));
  const category = coding.devices[node as number]?.category ?? null;
  const fine = new Set((options.fine ?? []).flatMap((slug) => coding.observableOf('symptom', slug) ?? []));
  const absent = impliedAbsences(coding, { stated, category, complete: options.complete, fine });
  return [...seen, ...absent.map((observable) => ({ observable, value: 0, implied: true }))];
}
