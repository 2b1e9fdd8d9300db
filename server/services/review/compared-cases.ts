import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { type ComparedCase, comparedCase } from '../../../shared/domain/review/likely-duplicates';
import type { CaseRecord } from '../../../shared/schemas/case';
import type { Db } from '../../db';
import { findCases, findContentHashes } from '../../repositories/case-repository';

/** Cases kept taken apart, some ten kilobytes each: what waits of a few models, which a moderator's next page compares again. */
const MOST_KEPT = 1_000;

/** By id and hash of the content; null for a case that names what the vocabulary does not hold. They go with their model. */
const keptOf = new WeakMap<CasebookModel, Map<string, ComparedCase | null>>();

/**
 * The named cases that are stored, taken apart for comparing, in order of id. Only those are read that were not compared lately, or
 * have changed since; one that names what the vocabulary does not hold any more is left out.
 */
export async function findCompared(db: Db, model: CasebookModel, ids: readonly string[]): Promise<Map<string, ComparedCase>> {
  const kept = keptOf.get(model) ?? new Map<string, ComparedCase | null>();
  keptOf.set(model, kept);
  const hashes = await findContentHashes(db, ids);
  const keyOf = (id: string) => `${id} ${hashes.get(id)}`;
  const unknown = [...hashes.keys()].filter((id) => !kept.has(keyOf(id)));
  for (const record of await findCases(db, unknown)) kept.set(keyOf(record.id), takeApart(model, record));
  const found = new Map<string, ComparedCase>();
  for (const id of hashes.keys()) {
    const compared = kept.get(keyOf(id));
    if (compared === undefined) continue;
    // A map lists its entries in the order in which they were put: the first are the ones not asked for longest.
    kept.delete(keyOf(id));
    kept.set(keyOf(id), compared);
    if (compared !== null) found.set(id, compared);
  }
  for (const key of kept.keys()) {
    if (kept.size <= MOST_KEPT) break;
    kept.delete(key);
  }
  return found;
}

function takeApart(model: CasebookModel, { content }: CaseRecord): ComparedCase | null {
  try {
    return comparedCase(model.coding, content);
  } catch (error) {
    if (error instanceof Error && error.name === 'CodingError') return null;
    throw error;
  }
}
