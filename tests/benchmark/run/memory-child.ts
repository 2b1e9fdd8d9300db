// Run by the benchmark in a process of its own: `memory-child.ts snapshot <file>` or `memory-child.ts objects <cases>`; prints megabytes as JSON.
import { setTimeout as wait } from 'node:timers/promises';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { lookUpQuestions } from '../rows/look-up';
import { readModel } from '../rows/starting';
import { drawCases } from '../world/draw';
import { emptyModel } from '../world/model';

const [, , kind = '', what = ''] = process.argv;

async function used(): Promise<{ held: number; resident: number }> {
  for (let i = 0; i < 3; i += 1) {
    globalThis.gc?.();
    await wait(30);
  }
  const { heapUsed, external, rss } = process.memoryUsage();
  return { held: (heapUsed + external) / 1e6, resident: rss / 1e6 };
}

/** As in a server that has run for a while: everything is read, and the file let go of. */
function wholeModel(file: string): CasebookModel {
  const { model, rest } = readModel(file, emptyModel());
  rest.complete();
  return model;
}

const before = await used();
let kept: unknown;
let afterStart = before;
if (kind === 'snapshot') {
  const model = wholeModel(what);
  kept = model;
  afterStart = await used();
  for (const question of lookUpQuestions(model, 200)) lookUp(model, question);
} else {
  // What somebody keeps who keeps cases as objects: what is counted and shown of each, without its text.
  const all: unknown[] = [];
  for (const { id, content } of drawCases(1, Number(what))) {
    const { device, month, symptoms, steps, causes, proof, outcome } = content;
    all.push({ id, device, month, symptoms, steps, causes, proof, outcome });
  }
  kept = all;
}
const after = await used();
console.log(
  JSON.stringify({
    start: afterStart.held - before.held,
    held: after.held - before.held,
    resident: after.resident - before.resident,
    kept: kept !== undefined,
  }),
);
