import { AsyncLocalStorage } from 'node:async_hooks';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';

/** What an answer under way was counted from. */
export type Source = {
  model: CasebookModel;
  /** Revision of what the model counts, taken before anything was counted. */
  revision: number;
  /** The model that answers now. */
  current: () => Promise<CasebookModel>;
};

/** What is learned of an answer while it is made, by whoever may keep it. */
export type Answering = {
  source: Source | null;
  /** Whether, so far, the answer hangs on nothing but what was asked and the casebook in memory. */
  lasting: boolean;
  /** What is to be done whenever the answer is given again, with the seconds that giving it took. */
  again: ((seconds: number) => void)[];
};

/**
 * Procedures whose answer to somebody who is not signed in hangs on nothing but their input and the casebook in memory. `casebook.overview`
 * also counts working units, which no kept page shows.
 */
const LASTING: ReadonlySet<string> = new Set([
  'account.me',
  'browse.listSymptoms',
  'casebook.getCatalogue',
  'casebook.listVocabulary',
  'casebook.overview',
  'lookup.ask',
]);

/** The bundlers load this module several times in one process; there is one store. */
const kept = globalThis as typeof globalThis & { secondBenchAnswering?: AsyncLocalStorage<Answering> };
const storage = (): AsyncLocalStorage<Answering> => (kept.secondBenchAnswering ??= new AsyncLocalStorage());

/** Makes an answer; what is learned of it on the way is in the record, which is whole once the answer is. */
export async function watchAnswer(make: () => Promise<unknown>): Promise<Answering> {
  const answering: Answering = { source: null, lasting: true, again: [] };
  await storage().run(answering, make);
  return answering;
}

/** Takes down that a procedure was called for the answer under way. Does nothing where nobody watches. */
export function noteProcedure(path: string, { ok, isGuest }: { ok: boolean; isGuest: boolean }): void {
  const answering = storage().getStore();
  if (answering !== undefined && !(ok && isGuest && LASTING.has(path))) answering.lasting = false;
}

/** Takes down what the answer under way is about to be counted from; it does not last where that changed on the way. */
export function noteSource(model: CasebookModel, current: Source['current']): void {
  const answering = storage().getStore();
  if (answering === undefined) return;
  const { revision } = model.counts;
  answering.source ??= { model, revision, current };
  if (answering.source.model !== model || answering.source.revision !== revision) answering.lasting = false;
}

/** Takes down what is to be done whenever the answer under way is given again. */
export function noteAgain(work: (seconds: number) => void): void {
  storage().getStore()?.again.push(work);
}
