import { bestStep, type PlanGraph, type Situation } from './plan-graph';

/** Expected over all outcomes: shares of units, minutes, money. */
export type PlanTotals = { cost: number; minutes: number; partCost: number; handedOver: number };

/** After some number of steps of the plan: share of units that work, minutes and part cost spent. */
export type RunningTotals = { cured: number; minutes: number; partCost: number };

/** What following the plan to its end costs, exactly, by folding back over all its outcomes. */
export function expectedTotals(graph: PlanGraph): PlanTotals {
  const known = new Map<Situation, PlanTotals>();
  const totalsFrom = (situation: Situation): PlanTotals => {
    const found = known.get(situation);
    if (found) return found;
    const branch = bestStep(graph, situation);
    const totals: PlanTotals = { cost: graph.problem.handOverCost, minutes: 0, partCost: 0, handedOver: 1 };
    if (branch !== null) {
      const step = (branch.kind === 'fix' ? graph.problem.fixes : graph.problem.checks)[branch.position]!;
      Object.assign(totals, { cost: step.cost, minutes: step.minutes, partCost: step.partCost, handedOver: 0 });
      for (const way of branch.ways) {
        const rest = totalsFrom(way.to);
        totals.cost += way.chance * rest.cost;
        totals.minutes += way.chance * rest.minutes;
        totals.partCost += way.chance * rest.partCost;
        totals.handedOver += way.chance * rest.handedOver;
      }
    }
    known.set(situation, totals);
    return totals;
  };
  return totalsFrom(graph.root);
}

/** The running totals after 0, 1, 2 … steps, over all outcomes, until every unit works or was handed over. */
export function runningTotals(graph: PlanGraph): RunningTotals[] {
  const running: RunningTotals[] = [{ cured: 0, minutes: 0, partCost: 0 }];
  let frontier = new Map<Situation, number>([[graph.root, 1]]);
  while (frontier.size > 0) {
    const next = new Map<Situation, number>();
    const totals = { ...running.at(-1)! };
    for (const [situation, reach] of frontier) {
      const branch = bestStep(graph, situation);
      if (branch === null) continue;
      const step = (branch.kind === 'fix' ? graph.problem.fixes : graph.problem.checks)[branch.position]!;
      totals.minutes += reach * step.minutes;
      totals.partCost += reach * step.partCost;
      let onward = 0;
      for (const way of branch.ways) {
        onward += way.chance;
        next.set(way.to, (next.get(way.to) ?? 0) + reach * way.chance);
      }
      if (branch.kind === 'fix') totals.cured += reach * (1 - onward);
    }
    running.push(totals);
    frontier = next;
  }
  return running;
}
