import { caseEntry } from '../../shared/domain/casebook/case-entry';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { listItem } from '../../shared/domain/casebook/list-cases';
import type { FoundCase, SearchHit } from '../../shared/schemas/search';
import type { Db } from '../db';
import { findCases } from '../repositories/case-repository';

/**
 * The found cases with the words to show them, in their order: from memory, and from the database where the casebook has
 * not caught up yet. One that was taken back since it was found is left out.
 */
export async function showHits(db: Db, model: CasebookModel, hits: readonly SearchHit[]): Promise<FoundCase[]> {
  const missing = hits.filter((hit) => !model.rows.has(hit.id)).map((hit) => hit.id);
  const stored = missing.length === 0 ? [] : await findCases(db, missing);
  const entries = new Map(stored.filter((record) => record.status === 'accepted').map((record) => [record.id, caseEntry(model.coding, record)]));
  return hits.flatMap((hit) => {
    const row = model.rows.get(hit.id);
    const entry = row === undefined ? entries.get(hit.id) : model.entries.get(row);
    return entry ? [{ ...hit, item: listItem(model, entry) }] : [];
  });
}
