import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { caseView } from '../../../shared/domain/casebook/case-view';
import {
  comparedCase,
  duplicateCandidates,
  LIKELY_DUPLICATE,
  type Likeness,
  likenessOf,
} from '../../../shared/domain/review/likely-duplicates';
import type { CaseRecord } from '../../../shared/schemas/case';
import type { CaseView } from '../../../shared/schemas/case-view';
import type { Db } from '../../db';
import { findCases } from '../../repositories/case-repository';
import { listWaitingOfModel } from '../../repositories/review-queue';

export type LikelyDuplicate = { view: CaseView; likeness: Likeness };

/** Other waiting cases of the same model that are compared, and duplicates that are shown. */
const WAITING_MOST = 100;
const SHOWN_MOST = 4;

/**
 * Cases that look like the same repair told twice, most alike first: accepted ones that the posting lists name for its
 * findings, and those of its model that wait beside it. Their texts are read for these few alone.
 */
export async function findDuplicates(db: Db, model: CasebookModel, { id, content }: CaseRecord): Promise<LikelyDuplicate[]> {
  const modelSlug = model.words.devices.get(content.device)?.model.slug ?? content.device;
  const ids = [
    ...duplicateCandidates(model, id, content),
    ...(await listWaitingOfModel(db, modelSlug, { not: id, most: WAITING_MOST })),
  ];
  const own = comparedCase(model.coding, content);
  return (await findCases(db, ids))
    .flatMap((record) => {
      const likeness = likenessIn(model, own, record);
      return likeness === null || likeness.similarity < LIKELY_DUPLICATE ? [] : [{ record, likeness }];
    })
    .sort((a, b) => b.likeness.similarity - a.likeness.similarity)
    .slice(0, SHOWN_MOST)
    .map(({ record, likeness }) => ({ view: caseView(model.words, record), likeness }));
}

/** Null for a case that names what the vocabulary does not hold any more. */
function likenessIn(model: CasebookModel, own: ReturnType<typeof comparedCase>, { content }: CaseRecord): Likeness | null {
  try {
    return likenessOf(model, own, comparedCase(model.coding, content));
  } catch (error) {
    if (error instanceof Error && error.name === 'CodingError') return null;
    throw error;
  }
}
