// A program that works on a casebook until it is killed: posts, decides, corrects, takes back, restores, merges, and has the
// search index follow, four things at a time. It says on standard output what it is about to do and what it has done.
//
// Called as: kill-worker <database file> <seed>
import { writeSync } from 'node:fs';
import { getCasebook } from '../../../server/casebook/current-casebook';
import { tellFollowers } from '../../../server/change-feed/tell-followers';
import { contentHash } from '../../../server/content-hash';
import { createDb } from '../../../server/db';
import { caseIdFrom } from '../../../server/ids';
import { findCase } from '../../../server/repositories/case-repository';
import { getSearch } from '../../../server/search/current-search';
import { acceptCase, correctCase } from '../../../server/services/review/accept-case';
import { mergeCase } from '../../../server/services/review/merge-case';
import { restoreCase, retractPublished } from '../../../server/services/review/take-back';
import { askForChanges, declineCase } from '../../../server/services/review/turn-down';
import { withdrawCase } from '../../../server/services/submit-changes';
import { submitCase } from '../../../server/services/submit-case';
import { draftOfContent } from '../../../shared/domain/submission/draft-of-content';
import type { CaseContent } from '../../../shared/schemas/case';
import { createRandom } from '../../../shared/stats/random';
import { smallCases } from '../fixtures/small-cases';

const [file = '', seed = '1'] = process.argv.slice(2);
const random = createRandom(Number(seed));
const db = createDb(`file:${file}`);
const LANES = 4;
const poster = { id: 'poster', role: 'contributor' as const };
const moderator = { id: 'moderator', role: 'moderator' as const };
const now = new Date('2026-11-25T12:00:00Z');
const newId = () => caseIdFrom(Uint8Array.from({ length: 10 }, () => Math.floor(random() * 256)));
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;

/** One line, written before anything else happens: a pipe keeps what was written, whatever becomes of the writer. */
function say(line: object): void {
  for (let left = Buffer.from(`${JSON.stringify(line)}\n`); left.length > 0; ) {
    try {
      left = left.subarray(writeSync(1, left));
    } catch (error) {
      // The reader is slower than this: wait for it, a millisecond at a time.
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1);
    }
  }
}

const { model } = await getCasebook(db);
getSearch(db);

let drawn = 0;
function newContent(): CaseContent {
  drawn++;
  const [record] = smallCases(1, Number(seed) * 1000 + drawn);
  const content = (record as NonNullable<typeof record>).content;
  const symptoms = [{ symptom: 'grey-screen', present: true }];
  // Checks of parts that this board has.
  const steps = content.steps.filter((step) => step.kind === 'fix' || ['supply-apart', 'clock-at-processor'].includes(step.check));
  return { ...content, device: 'quellbrook-8-rev-a', symptoms, steps, readings: [], narrative: `Came in ${seed} ${drawn} times, and left again.` };
}

async function post(): Promise<string> {
  const id = newId();
  say({ about: id, op: 'post' });
  const document = draftOfContent(newContent(), [], newId);
  const outcome = await submitCase(db, model, { actor: poster, draftId: null, document, now, newId: once(id), newKey: newId });
  if (outcome.kind !== 'submitted') throw new Error(`A good case was not taken: ${JSON.stringify(outcome)}`);
  return id;
}

/** The given id first, for the case; then any other, for what hangs on it. */
function once(id: string): () => string {
  let given = false;
  return () => {
    if (given) return newId();
    given = true;
    return id;
  };
}

type Step = (id: string, content: CaseContent) => Promise<unknown>;

const decide = (content: CaseContent, id: string) => ({ actor: moderator, id, seen: contentHash(content), now });
const STEPS: Record<string, Record<string, Step>> = {
  submitted: {
    accept: (id, content) => acceptCase(db, model, decide(content, id)),
    decline: (id, content) => declineCase(db, { ...decide(content, id), reason: 'too-little', text: '' }),
    ask: (id, content) => askForChanges(db, { ...decide(content, id), asked: [{ field: 'narrative', reason: 'Say more.' }] }),
    withdraw: (id) => withdrawCase(db, { actor: poster, id, now }),
    merge: async (id, content) => {
      const first = await db.caseFile.findFirst({ where: { status: 'accepted' }, select: { id: true } });
      return first === null ? null : mergeCase(db, { ...decide(content, id), into: first.id });
    },
  },
  accepted: {
    retract: (id, content) => retractPublished(db, { ...decide(content, id), text: 'It was wrong.' }),
    correct: (id, content) => {
      const document = draftOfContent({ ...content, narrative: `${content.narrative} More.` }, [], newId);
      return correctCase(db, model, { ...decide(content, id), document, text: 'More was known.' });
    },
  },
  retracted: { restore: (id, content) => restoreCase(db, model, decide(content, id)) },
  declined: { restore: (id, content) => restoreCase(db, model, decide(content, id)) },
  merged: { restore: (id, content) => restoreCase(db, model, decide(content, id)) },
};

async function report(id: string): Promise<void> {
  const record = await findCase(db, id);
  if (record !== null) say({ done: id, status: record.status, content: contentHash(record.content) });
}

/** Works on the cases of one lane alone: of each case, one thing at most is under way when the end comes. */
async function work(own: string[]): Promise<void> {
  for (;;) {
    const id = own.length < 3 || random() < 0.3 ? null : pick(own);
    if (id === null) {
      const posted = await post();
      own.push(posted);
      await report(posted);
      continue;
    }
    const record = await findCase(db, id);
    const steps = Object.entries(STEPS[record?.status ?? ''] ?? {});
    if (record === null || steps.length === 0) {
      own.splice(own.indexOf(id), 1);
      continue;
    }
    const [op, step] = pick(steps);
    say({ about: id, op });
    await step(id, record.content);
    await tellFollowers(db);
    await report(id);
  }
}

const there = await db.caseFile.findMany({
  where: { postedBy: { userId: poster.id } },
  select: { id: true },
  orderBy: { id: 'asc' },
});
await Promise.all(
  Array.from({ length: LANES }, (_, lane) => work(there.filter((_, i) => i % LANES === lane).map(({ id }) => id))),
);
