import type { PlanTask } from '../../shared/domain/plan/hazards-later';
import type { FoundPlan } from '../../shared/domain/plan/plan-repair';

/** What the thread that searches for plans is told, and what it tells. */
export type PlanOrder = { id: number; task: PlanTask };
export type PlanAnswer = { id: number; plan: FoundPlan };
