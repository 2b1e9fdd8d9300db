import type { Prisma } from '../../../prisma/generated/client';
import type { LogKind } from '../../../shared/domain/log/log-kinds';
import { appendLog } from '../log/append-log';

/** What a moderator did, for the log. */
export type Decision = {
  kind: LogKind;
  actorId: string;
  now: Date;
  subject: { kind: 'case' | 'report'; id: string };
  detail: Record<string, unknown>;
};

/** Writes a decision to the log, in the transaction of the decision itself. */
export async function logDecision(tx: Prisma.TransactionClient, { now, ...decision }: Decision): Promise<void> {
  await appendLog(tx, { at: now, ...decision });
}
