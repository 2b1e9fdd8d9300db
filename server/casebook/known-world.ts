import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import type { RepairSummary } from '../../shared/schemas/evaluation';
import type { Finding } from '../../shared/schemas/finding';

/** An invented world whose cases the casebook holds: what really is likely there, and units to try advice on. */
export type KnownWorld = {
  /** Exact P(cause | findings) by slug; null for a board or findings that the world does not have. */
  truePosterior(board: string, findings: readonly Finding[]): ReadonlyMap<string, number> | null;
  /** Takes units that no case tells of through the plan, the first suggested check and three habits. */
  simulateRepairs(model: CasebookModel, options: { units: number; seed: string; onProgress: (done: number) => void }): RepairSummary;
  /** The summary as lines for a terminal. */
  repairLines(summary: RepairSummary): string[];
};
