import 'server-only';
import type { AskedInForm } from '../../../../shared/domain/submission/asked-in-form';
import { draftFromQuestion } from '../../../../shared/domain/submission/draft-from-question';
import type { DeviceCatalogue } from '../../../../shared/schemas/device';
import type { Finding } from '../../../../shared/schemas/finding';
import { type DraftDocument, emptyDraft } from '../../../../shared/schemas/submission';
import type { Vocabulary } from '../../../../shared/schemas/vocabulary';
import { sameKey } from '../../../_address/finding-code';
import { isBlank, type Question, questionHref } from '../../../_address/question';
import { isRefusal, serverCaller } from '../../../_trpc/server';

/** What the form begins with. */
export type FormStart = {
  vocabulary: Vocabulary;
  catalogue: DeviceCatalogue;
  /** Address of the form, to come back to after signing in. */
  here: string;
  /** The month of now, YYYY-MM. */
  month: string;
  signedIn: boolean;
  mayPost: boolean;
  from: 'blank' | 'look-up' | 'draft';
  document: DraftDocument;
  /** The stored draft that this is; null for none. `caseId`: the case whose changes it holds. */
  draft: { id: string; caseId: string | null; savedAt: string } | null;
  /** What a moderator asked to have changed. */
  asked: AskedInForm[];
  /** A draft was named that is not there (or not for who asks). */
  gone: boolean;
};

/** Everything that the form needs, read for one request. */
export async function loadStart(question: Question, draftId: string | null): Promise<FormStart> {
  const { casebook, submission } = serverCaller();
  const [vocabulary, catalogue, standing] = await Promise.all([
    casebook.listVocabulary(),
    casebook.getCatalogue(),
    submission.standing(),
  ]);
  const month = new Date().toISOString().slice(0, 7);
  const here = draftId === null ? questionHref('/post', question) : `/post?draft=${draftId}`;
  const base = { here, vocabulary, catalogue, month, ...standing, draft: null, asked: [], gone: false };
  if (draftId !== null) {
    const draft = standing.mayPost ? await findDraft(draftId) : null;
    if (draft === null) return { ...base, from: 'blank', document: emptyDraft(month), gone: standing.signedIn };
    return { ...base, from: 'draft', document: draft.document, draft, asked: draft.asked };
  }
  if (isBlank(question) && question.device === null) return { ...base, from: 'blank', document: emptyDraft(month) };
  return { ...base, from: 'look-up', document: await documentOf(question, month) };
}

async function findDraft(id: string) {
  try {
    return await serverCaller().submission.getDraft({ id });
  } catch (error) {
    if (isRefusal(error, 'draft-not-found')) return null;
    throw error;
  }
}

async function documentOf(question: Question, month: string): Promise<DraftDocument> {
  const read = await serverCaller().submission.readWords({ text: question.text });
  const changed = [...question.set, ...question.without];
  const stated = read.findings.filter((f) => !changed.some((other) => sameKey(other, f)));
  const findings = [...stated.map(({ kind, id, value }) => ({ kind, id, value }) as Finding), ...question.set];
  let keys = 0;
  return draftFromQuestion({
    month,
    device: question.device ?? read.device,
    complete: question.complete,
    findings,
    unread: [...read.unread, ...read.ambiguous.map(({ text }) => text)].filter((text) => !question.aside.includes(text)),
    newKey: () => `q${keys++}`,
  });
}
