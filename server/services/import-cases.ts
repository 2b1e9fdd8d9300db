import type { Prisma, PrismaClient } from '../../prisma/generated/client';
import type { CaseRecord } from '../../shared/schemas/case';
import { appendEvent } from '../repositories/event-log-repository';
import { type IncomingCase, insertCases } from '../repositories/insert-cases';
import { enterQueue } from '../repositories/waiting-cases';
import { appendLog } from './log/append-log';

export type ImportInput = {
  cases: readonly Omit<IncomingCase, 'status'>[];
  /** Accept them at once, without review: for whoever runs the machine. It is logged. */
  accept: boolean;
  /** Where they came from, for the log. */
  source: string;
  actor: string;
  now: Date;
  newId: () => string;
  onProgress?: (done: number) => void;
};

const LONGEST_IMPORT_MS = 600_000;

/** Stores checked cases, all or none, and logs it. Returns those that were new. */
export async function importCases(db: PrismaClient, input: ImportInput): Promise<CaseRecord[]> {
  const { cases, accept, source, actor, now, newId, onProgress } = input;
  const status = accept ? 'accepted' : 'submitted';
  return db.$transaction(
    async (tx) => {
      const options = onProgress ? { newId, onProgress } : { newId };
      const added = await insertCases(
        tx,
        cases.map((incoming) => ({ ...incoming, status }) as const),
        options,
      );
      if (!accept) await enterQueue(tx, added.map((record) => record.id), now);
      if (accept && added.length > 0) await logAccepted(tx, added.length, input);
      const detail = `${added.length} of ${cases.length} cases from ${source} entered as ${status}.`;
      await appendEvent(tx, { id: newId(), at: now, kind: accept ? 'import-accepted' : 'import', actor, detail });
      return added;
    },
    { timeout: LONGEST_IMPORT_MS, maxWait: 30_000 },
  );
}

/** Accepting without review is a decision like any other. */
async function logAccepted(tx: Prisma.TransactionClient, cases: number, { now }: ImportInput): Promise<void> {
  const subject = { kind: 'casebook', id: 'casebook' } as const;
  await appendLog(tx, { at: now, kind: 'cases-imported', actorId: null, subject, detail: { cases } });
}
