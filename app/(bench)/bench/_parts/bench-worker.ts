import { answerBench, benchQuestion, FIRST_EFFORT, planBench, withIntervals } from '../../../../shared/domain/bench/answer-bench';
import type { CasebookModel } from '../../../../shared/domain/casebook/casebook-model';
import { modelFromSnapshot, type PreparedWords, prepareWords } from '../../../../shared/domain/snapshot/casebook-snapshot';
import type { FromWorker, ToWorker } from './worker-messages';

/**
 * Answers for the bench beside the page, so that reckoning never holds up a key or a thumb. Likely causes and next
 * checks come first, then a plan to go on with, then the intervals, then the plan in full; a newer question ends what
 * is left of an older one.
 */
let prepared: PreparedWords | null = null;
const models = new Map<string, CasebookModel>();
let asked = 0;

const say = (message: FromWorker) => self.postMessage(message);
/** Lets a newer question in before the next piece of work. */
const breathe = () => new Promise((resolve) => setTimeout(resolve, 0));

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'words') {
    prepared = prepareWords(data.words);
    models.clear();
  } else if (data.kind === 'snapshot') {
    if (prepared) models.set(data.snapshot.device, modelFromSnapshot(prepared, data.snapshot));
  } else if (data.kind === 'read') readText(data);
  else void answer(data).catch((error: unknown) => say({ kind: 'trouble', id: data.id, told: String(error) }));
});

async function answer({ id, question, options }: Extract<ToWorker, { kind: 'ask' }>): Promise<void> {
  asked = id;
  const model = models.get(question.device);
  if (model === undefined) return;
  const started = performance.now();
  const coded = benchQuestion(model, question);
  const quick = answerBench(model, coded);
  say({ kind: 'answer', id, answer: quick, ms: performance.now() - started });
  const ms = () => performance.now() - started;
  await breathe();
  if (asked !== id) return;
  say({ kind: 'plan', id, plan: planBench(model, question, options, FIRST_EFFORT), final: false, ms: ms() });
  await breathe();
  if (asked !== id) return;
  say({ kind: 'answer', id, answer: withIntervals(model, coded, quick), ms: ms() });
  await breathe();
  if (asked !== id) return;
  say({ kind: 'plan', id, plan: planBench(model, question, options), final: true, ms: ms() });
}

function readText({ id, text }: Extract<ToWorker, { kind: 'read' }>): void {
  if (prepared === null) return;
  const { findings, unread, ambiguous } = prepared.read(text);
  const stated = findings.map(({ kind, id: about, value }) => ({ kind, id: about, value }) as (typeof findings)[number]);
  say({ kind: 'read', id, read: { findings: stated, unread: [...unread, ...ambiguous].map((span) => span.text) } });
}
