import { parentPort } from 'node:worker_threads';
import { findPlan } from '../../shared/domain/plan/hazards-later';
import type { PlanAnswer, PlanOrder } from './plan-messages';

// A thread of its own: a search of some tenths of a second holds nobody else up. Bundled after the pages are built.
parentPort?.on('message', ({ id, task }: PlanOrder) => {
  const { steps, handOver, expectedMinutes, expectedCost, chanceResolved } = findPlan(task);
  const answer: PlanAnswer = { id, plan: { steps, handOver, expectedMinutes, expectedCost, chanceResolved } };
  parentPort?.postMessage(answer);
});
