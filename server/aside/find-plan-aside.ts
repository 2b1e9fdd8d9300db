import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Worker } from 'node:worker_threads';
import { findPlan, type PlanTask } from '../../shared/domain/plan/hazards-later';
import type { FoundPlan } from '../../shared/domain/plan/plan-repair';
import { getLogger } from '../watching/logger';
import type { PlanAnswer, PlanOrder } from './plan-messages';

/** Where `server/start/build-plan-worker.mjs` puts the bundled thread; elsewhere than on the built site it may be of older sources. */
const builtFile = () => (process.env.NODE_ENV === 'production' ? join(process.cwd(), '.next/plan-worker.mjs') : '');

type Waiting = { resolve: (plan: FoundPlan) => void; reject: (error: Error) => void };
type Thread = { worker: Worker; waiting: Map<number, Waiting>; nextId: number };

/** The bundler may load this module several times in one process; there is one thread. */
const kept = globalThis as typeof globalThis & { secondBenchPlanThread?: Thread };

/**
 * Searches for a plan in a thread of its own, so that nobody else waits meanwhile. Where no thread was built (in development, on the
 * command line) or it has failed, it is done here: the plan is the same.
 */
export async function findPlanAside(task: PlanTask, file: string = builtFile()): Promise<FoundPlan> {
  const thread = kept.secondBenchPlanThread ?? startThread(file);
  if (thread === null) return findPlan(task);
  try {
    return await new Promise((resolve, reject) => {
      const id = thread.nextId++;
      thread.waiting.set(id, { resolve, reject });
      // It holds the process open only while something is waited for.
      thread.worker.ref();
      const order: PlanOrder = { id, task };
      thread.worker.postMessage(order);
    });
  } catch (error) {
    getLogger().error({ err: error }, 'The thread that searches for plans has failed; this plan is made without it.');
    return findPlan(task);
  }
}

/** Ends the thread, where there is one; the next plan starts another. */
export async function endPlanThread(): Promise<void> {
  const thread = kept.secondBenchPlanThread;
  delete kept.secondBenchPlanThread;
  await thread?.worker.terminate();
}

function startThread(file: string): Thread | null {
  if (!existsSync(file)) return null;
  // Asked for at run time: the bundler of the pages would look for the thread's file among its sources.
  const { Worker } = process.getBuiltinModule('node:worker_threads');
  const thread: Thread = { worker: new Worker(file), waiting: new Map(), nextId: 0 };
  kept.secondBenchPlanThread = thread;
  thread.worker.on('message', ({ id, plan }: PlanAnswer) => {
    thread.waiting.get(id)?.resolve(plan);
    thread.waiting.delete(id);
    if (thread.waiting.size === 0) thread.worker.unref();
  });
  const fail = (error: Error) => {
    if (kept.secondBenchPlanThread === thread) delete kept.secondBenchPlanThread;
    for (const { reject } of thread.waiting.values()) reject(error);
    thread.waiting.clear();
  };
  thread.worker.on('error', fail);
  thread.worker.on('exit', () => fail(new Error('The thread that searches for plans has ended.')));
  return thread;
}
