import { excerptOf } from '../../shared/domain/casebook/case-entry';
import { type CasebookModel, rowOfCase } from '../../shared/domain/casebook/casebook-model';
import { type CaseListFigures, lineOfRecord, listItem } from '../../shared/domain/casebook/list-cases';
import type { FoundCase, SearchHit } from '../../shared/schemas/search';
import type { Db } from '../db';
import { findCases } from '../repositories/case-repository';
import { findExcerpts } from '../services/answer-question';

/**
 * The found cases with the words to show them, in their order: figures from memory, and from the database where the
 * casebook has not caught up yet. One that was taken back since it was found is left out.
 */
export async function showHits(db: Db, model: CasebookModel, hits: readonly SearchHit[]): Promise<FoundCase[]> {
  const rows = new Map(hits.map(({ id }) => [id, rowOfCase(model, id)]));
  const inMemory = hits.filter(({ id }) => (rows.get(id) as number) >= 0).map(({ id }) => id);
  const excerpts = await findExcerpts(db, inMemory);
  const lines = new Map<string, CaseListFigures>();
  for (const id of inMemory) {
    const entry = model.entries.get(rows.get(id) as number);
    if (entry) lines.set(id, listItem(model, entry));
  }
  const missing = hits.filter(({ id }) => !lines.has(id)).map(({ id }) => id);
  for (const record of missing.length === 0 ? [] : await findCases(db, missing)) {
    if (record.status !== 'accepted') continue;
    lines.set(record.id, lineOfRecord(model.words, record));
    excerpts.set(record.id, excerptOf(record.content.narrative));
  }
  return hits.flatMap((hit) => {
    const line = lines.get(hit.id);
    return line ? [{ ...hit, item: { ...line, excerpt: excerpts.get(hit.id) ?? '' } }] : [];
  });
}
