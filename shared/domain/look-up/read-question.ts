import type { Finding, ReadFinding } from '../../schemas/finding';
import type { LookUpResult } from '../../schemas/look-up';
import type { FindingKey, Question } from '../../schemas/question';
import type { CodedFinding } from '../../stats/layout';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, isKnownFinding } from '../casebook/vocabulary-words';
import { renameQuestion } from '../words/rename-content';
import { encodeFindings } from '../coding/encode-findings';
import { hiddenSymptoms } from '../coding/hidden-symptoms';
import { saysFine } from '../read-query/says-fine';

/** A question as read, and as the statistics take it. */
export type CodedQuestion = {
  read: LookUpResult['read'];
  /** Device node of the layout; 0 is any device. */
  device: number;
  /** Stated findings, then implied absences. */
  findings: (CodedFinding & { implied: boolean })[];
};

const sameKey = (a: FindingKey, b: FindingKey) => a.kind === b.kind && a.id === b.id;

/**
 * Reads a question's words, applies what was changed after reading, and codes the findings. Nothing is dropped:
 * what the vocabulary does not know, and an earlier word that a later one contradicts, is returned as unread.
 */
export function readQuestion(model: CasebookModel, asked: Question): CodedQuestion {
  const question = renameQuestion(model.words.aliases, asked);
  const words = model.read(question.text);
  const { findings, unread } = editedFindings(model, question, words.findings);
  const device = deviceOf(model, question.device, words.device);
  const read: LookUpResult['read'] = {
    findings,
    unread: [...words.unread, ...unread],
    ambiguous: words.ambiguous.filter((span) => !span.choices.some((choice) => question.set.some((f) => sameKey(f, choice)))),
    hidden: hiddenOf(model, findings),
    device,
    complete: question.complete,
  };
  const stated = findings.map(({ kind, id, value }) => ({ kind, id, value }) as Finding);
  return {
    read,
    device: device ? (model.coding.deviceOf(device.slug) ?? 0) : 0,
    findings: encodeFindings(model.coding, stated, {
      complete: question.complete,
      device: device?.slug ?? null,
      fine: findings.filter(saysFine).map(({ id }) => id),
    }),
  };
}

function editedFindings(model: CasebookModel, question: Question, fromWords: readonly ReadFinding[]) {
  const unread: LookUpResult['read']['unread'] = [];
  const kept: ReadFinding[] = [];
  const take = (finding: ReadFinding) => {
    const earlier = kept.findIndex((other) => sameKey(other, finding));
    const [before] = earlier < 0 ? [] : kept.splice(earlier, 1);
    if (before && before.value !== finding.value && before.text !== '') {
      unread.push({ text: before.text, start: before.start, end: before.end });
    }
    kept.push(finding);
  };
  for (const finding of fromWords) {
    const changed = [...question.set, ...question.without].some((other) => sameKey(other, finding));
    if (!changed) take({ ...finding, label: findingLabel(model.words, finding) });
  }
  for (const finding of question.set) {
    const span = fromWords.find((other) => sameKey(other, finding));
    if (isKnownFinding(model.words, finding)) {
      const { text, start, end } = span ?? { text: '', start: 0, end: 0 };
      take({ ...finding, label: findingLabel(model.words, finding), text, start, end });
    } else unread.push({ text: `${finding.id} ${finding.value}`, start: 0, end: 0 });
  }
  return { findings: kept, unread };
}

function hiddenOf({ coding, words }: CasebookModel, findings: readonly ReadFinding[]): LookUpResult['read']['hidden'] {
  const symptoms = findings.filter(({ kind }) => kind === 'symptom');
  const stated = new Map(symptoms.map(({ id, value }) => [coding.observableOf('symptom', id) ?? -1, value === 'present']));
  const named = (observable: number) => {
    const { slug } = coding.vocabulary.symptoms[observable]!;
    return { id: slug, label: words.symptoms.get(slug)?.label ?? slug };
  };
  return [...hiddenSymptoms(coding, stated)].map(([symptom, by]) => ({ ...named(symptom), by: named(by) }));
}

function deviceOf(model: CasebookModel, fromForm: string | null, fromWords: string | null): LookUpResult['read']['device'] {
  const slug = fromForm ?? fromWords;
  const place = slug === null ? undefined : model.words.devices.get(slug);
  return place ? { slug: place.slug, label: place.label, level: place.level, from: fromForm === null ? 'words' : 'form' } : null;
}
