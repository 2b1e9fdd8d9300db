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
import { findCompared } from './compared-cases';

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
  const likely = [...(await findCompared(db, model, ids))]
    .map(([of, other]) => ({ of, likeness: likenessOf(model, own, other) }))
    .filter(({ likeness }) => likeness.similarity >= LIKELY_DUPLICATE)
    .sort((a, b) => b.likeness.similarity - a.likeness.similarity)
    .slice(0, SHOWN_MOST);
  const records = new Map((await findCases(db, likely.map(({ of }) => of))).map((record) => [record.id, record]));
  return likely.flatMap(({ of, likeness }) => {
    const record = records.get(of);
    return record === undefined ? [] : [{ view: caseView(model.words, record), likeness }];
  });
}
