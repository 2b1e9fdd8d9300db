import type { CaseContent, Proof } from '../../schemas/case';

/** What the accepted reports say together: the most months that it held, and the fewest after which it came back. */
export type Afterwards = { heldMonths: number | null; cameBackMonths: number | null };

/** Sums up accepted reports; null where there are none. */
export function sumAfterwards(reports: readonly { kind: string; months: number }[]): Afterwards | null {
  if (reports.length === 0) return null;
  const months = (kind: string) => reports.filter((report) => report.kind === kind).map((report) => report.months);
  const [held, cameBack] = [months('held'), months('came-back')];
  return {
    heldMonths: held.length > 0 ? Math.max(...held) : null,
    cameBackMonths: cameBack.length > 0 ? Math.min(...cameBack) : null,
  };
}

/**
 * How the cause is proved now. A repair that came back did not hold: what only its holding had proved is suspected again.
 * One that held turns a suspicion into a repair that held, where a fix had cured and the case ended resolved. Substitution
 * and measurement stand by themselves.
 */
export function proofNow(content: CaseContent, after: Afterwards | null | undefined): Proof | null {
  if (after == null) return content.proof;
  if (after.cameBackMonths !== null) return content.proof === 'repair-held' ? 'suspected' : content.proof;
  const isCured = content.outcome === 'resolved' && content.steps.some((step) => step.kind === 'fix' && step.result === 'cured');
  return content.proof === 'suspected' && isCured ? 'repair-held' : content.proof;
}
