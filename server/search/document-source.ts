import { setImmediate as breath } from 'node:timers/promises';
import { type VocabularyWords, vocabularyWords } from '../../shared/domain/casebook/vocabulary-words';
import { DOCUMENT_VERSION, type SearchDocument, searchDocument } from '../../shared/domain/search/search-document';
import type { CaseRecord } from '../../shared/schemas/case';
import { AppError } from '../../shared/errors';
import { contentHash } from '../content-hash';
import type { Db } from '../db';
import { streamCases } from '../repositories/case-repository';
import { findCatalogue } from '../repositories/catalogue-repository';
import { findNewestReload } from '../repositories/event-log-repository';
import { loadVocabulary } from '../repositories/load-vocabulary';
import { findCasesWithPhotos } from '../repositories/photo-repository';

/** Makes the documents of cases, in the words of the vocabulary as it is now. */
export type DocumentSource = {
  words: VocabularyWords;
  /** Names the vocabulary, the catalogue and the form of the documents. */
  fingerprint: string;
  documents(records: readonly CaseRecord[]): Promise<SearchDocument[]>;
};

/** Reads vocabulary and catalogue. Throws `casebook-empty` where no device is stored. */
export async function readDocumentSource(db: Db): Promise<DocumentSource> {
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  // The database answers without waiting: the breaths are for whoever else asks this process.
  await breath();
  const vocabulary = await loadVocabulary(db);
  await breath();
  const words = vocabularyWords(vocabulary, catalogue);
  return {
    words,
    fingerprint: contentHash({ version: DOCUMENT_VERSION, vocabulary, catalogue }),
    documents: async (records) => {
      const withPhotos = await findCasesWithPhotos(db, records.map((record) => record.id));
      return records.map((record) => searchDocument(words, record, withPhotos.has(record.id)));
    },
  };
}

/** The same, read again only after an event that changes vocabulary or catalogue. */
export function keptDocumentSource(db: Db): () => Promise<DocumentSource> {
  let kept: { event: string | null; source: Promise<DocumentSource> } | null = null;
  return async () => {
    const event = await findNewestReload(db);
    if (kept === null || kept.event !== event) {
      const fresh = { event, source: readDocumentSource(db) };
      kept = fresh;
      fresh.source.catch(() => {
        if (kept === fresh) kept = null;
      });
    }
    return kept.source;
  };
}

const BATCH = 200;

/** Documents of every accepted case, in batches. */
export async function* allDocuments(db: Db, source: DocumentSource, onProgress?: (done: number) => void): AsyncGenerator<SearchDocument[]> {
  let records: CaseRecord[] = [];
  let done = 0;
  for await (const record of streamCases(db, 'accepted')) {
    records.push(record);
    if (records.length < BATCH) continue;
    yield await source.documents(records);
    done += records.length;
    onProgress?.(done);
    records = [];
  }
  if (records.length > 0) yield await source.documents(records);
  onProgress?.(done + records.length);
}
