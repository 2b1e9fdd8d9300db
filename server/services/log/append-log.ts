import type { Prisma } from '../../../prisma/generated/client';
import { keepsTime, type LogKind, type LogSubject } from '../../../shared/domain/log/log-kinds';
import { fillPersonKey, findPersonKey, insertSubjectKey, type StoredPersonKey } from '../../repositories/log-key-repository';
import { findLogPlace, type LogPlace } from '../../repositories/log-place';
import { insertLogEntry } from '../../repositories/log-repository';
import { newKey, personCommitment, subjectCommitment } from './commitment';
import { canonicalText, entryHash, NO_HASH } from './entry-hash';

export type LogInput = {
  at: Date;
  kind: LogKind;
  /** Account that acted; null for the machine, or where it must not be said. */
  actorId: string | null;
  subject: LogSubject;
  /**
   * What was done, for whoever reads the log later: codes, counts, words of the vocabulary. Everybody may read it, and
   * nothing ever removes it: no name, no free text about a person, no id of a case or an account.
   */
  detail: Record<string, unknown>;
};

/** Longest detail, in characters of its JSON: the wording of one entry of the vocabulary, before and after, fits. */
const DETAIL_MOST = 8_000;

/**
 * Adds the next entry to the log, inside the caller's transaction: what it records and the entry are stored together or not
 * at all. A transaction holds SQLite's one write lock from its start, so appends come one after another.
 *
 * @returns number and hash of the entry.
 * @throws where `tx` is no transaction, and where the actor has no account any more.
 */
export async function appendLog(tx: Prisma.TransactionClient, input: LogInput): Promise<{ seq: number; hash: string }> {
  if ('$connect' in tx) throw new Error('The log is written inside the transaction of what it records.');
  const { at, kind, actorId, subject } = input;
  const detail = canonicalText(input.detail);
  if (detail.length > DETAIL_MOST) throw new RangeError(`The detail of an entry is longer than ${DETAIL_MOST} characters.`);
  const place = await findLogPlace(tx, { actorId, kind: subject.kind, subjectId: subject.id });
  const seq = (place.head?.seq ?? 0) + 1;
  const moment = at.toISOString();
  const entry = {
    seq,
    month: moment.slice(0, 7),
    time: keepsTime(kind) ? `${moment.slice(0, 19)}Z` : null,
    kind,
    subjectKind: subject.kind,
    subject: await commitToSubject(tx, seq, subject, place),
    actor: actorId === null ? null : await commitToActor(tx, seq, actorId, place),
    detail,
    prevHash: place.head?.hash ?? NO_HASH,
  };
  const hash = entryHash(entry);
  await insertLogEntry(tx, { ...entry, hash });
  return { seq, hash };
}

/** Who acts on a case of their own does so under the key of that link, which is destroyed when the link is cut. */
async function commitToActor(tx: Prisma.TransactionClient, seq: number, userId: string, { actorKey }: LogPlace): Promise<string> {
  if (actorKey === null) throw new Error('Whoever acts has no account.');
  return personCommitment(await filledKey(tx, actorKey), 'actor', seq, userId);
}

async function commitToSubject(
  tx: Prisma.TransactionClient,
  seq: number,
  { kind, id }: LogSubject,
  { commitment: known }: LogPlace,
): Promise<string> {
  if (kind === 'account') {
    const own = await findPersonKey(tx, id);
    if (own === null) throw new Error('The account that the entry is about is not there.');
    return personCommitment(await filledKey(tx, own), 'subject', seq, id);
  }
  if (known !== null) return known;
  const key = newKey();
  const commitment = subjectCommitment(key, kind, id);
  await insertSubjectKey(tx, { kind, subjectId: id, key, commitment });
  return commitment;
}

/** A person's key; its random bytes are made when an entry first needs them. */
async function filledKey(tx: Prisma.TransactionClient, { id, key }: StoredPersonKey): Promise<string> {
  return key ?? fillPersonKey(tx, id, newKey());
}
