import { setImmediate as breath } from 'node:timers/promises';
import { addCase, retractCase } from '../../shared/domain/casebook/casebook-model';
import type { Db } from '../db';
import { listCaseChanges } from '../repositories/case-change-repository';
import { findCases } from '../repositories/case-repository';
import type { Casebook } from './load-casebook';

/** Changes taken up between two breaths of the event loop. */
const BATCH = 50;

/**
 * Brings the casebook up to the end of the change feed: a changed case is taken out as it was and, if it is accepted now,
 * counted as it is. Returns how many changes were taken up. Changes may be taken up twice without harm.
 */
export async function followChanges(db: Db, casebook: Pick<Casebook, 'model' | 'changeSeq'>): Promise<number> {
  let followed = 0;
  for (;;) {
    const changes = await listCaseChanges(db, { after: casebook.changeSeq, take: BATCH });
    const last = changes.at(-1);
    if (last === undefined) return followed;
    const ids = [...new Set(changes.map((change) => change.caseId))];
    const stored = await findCases(db, ids);
    // From here on nothing waits: no look-up sees a case that is half out.
    for (const id of ids) retractCase(casebook.model, id);
    for (const record of stored) if (record.status === 'accepted') addCase(casebook.model, record);
    casebook.changeSeq = Math.max(casebook.changeSeq, last.seq);
    followed += changes.length;
    // The database answers without waiting: a long import would be followed to its end before anybody else is heard.
    if (changes.length === BATCH) await breath();
  }
}
