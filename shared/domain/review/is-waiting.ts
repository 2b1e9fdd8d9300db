import type { CaseStatus } from '../../schemas/case';

/** Statuses in which a case stands in the moderators' queue. */
export const WAITING_STATUSES = ['submitted', 'resubmitted'] as const satisfies readonly CaseStatus[];

/** Whether a case waits for a moderator. */
export function isWaiting(status: CaseStatus): boolean {
  return (WAITING_STATUSES as readonly CaseStatus[]).includes(status);
}
