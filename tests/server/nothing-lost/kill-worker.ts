// A program that works on a casebook until it is killed: posts with and without photos, decides, corrects, takes back, restores,
// merges, changes the vocabulary and makes the search index anew, several things at a time. It says on standard output what it is
// about to do and what it has done.
//
// Called as: kill-worker <database file> <seed>
import { writeSync } from 'node:fs';
import { getCasebook } from '../../../server/casebook/current-casebook';
import { tellFollowers } from '../../../server/change-feed/tell-followers';
import { contentHash } from '../../../server/content-hash';
import { createDb } from '../../../server/db';
import { caseIdFrom } from '../../../server/ids';
import { photoFolderOf } from '../../../server/photos/photo-files';
import { findCase } from '../../../server/repositories/case-repository';
import { getSearch } from '../../../server/search/current-search';
import { createRandom } from '../../../shared/stats/random';
import type { Lane } from './lane';
import { caseLane } from './lane-of-cases';
import { discardDrafts } from './post-with-photos';
import { indexLane } from './lane-of-index';
import { wordLane } from './lane-of-words';

const [file = '', seed = '1'] = process.argv.slice(2);
const random = createRandom(Number(seed));
const db = createDb(`file:${file}`);
const CASE_LANES = 4;

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

await getCasebook(db);
const search = getSearch(db);

const lane: Lane = {
  db,
  photoFolder: photoFolderOf(file),
  search,
  seed: Number(seed),
  now: new Date('2026-11-25T12:00:00Z'),
  poster: { id: 'poster', role: 'contributor' },
  moderator: { id: 'moderator', role: 'moderator' },
  random,
  newId: () => caseIdFrom(Uint8Array.from({ length: 10 }, () => Math.floor(random() * 256))),
  pick: (list) => list[Math.floor(random() * list.length)] as (typeof list)[number],
  model: async () => (await getCasebook(db)).model,
  about: (key, op) => say({ about: key, op }),
  done: (key, status, content = '') => say({ done: key, status, content }),
  report: async (id) => {
    const record = await findCase(db, id);
    if (record !== null) say({ done: id, status: record.status, content: contentHash(record.content) });
  },
  tell: () => tellFollowers(db),
};

await discardDrafts(lane);
const there = await db.caseFile.findMany({
  where: { postedBy: { userId: lane.poster.id } },
  select: { id: true },
  orderBy: { id: 'asc' },
});
await Promise.all([
  ...Array.from({ length: CASE_LANES }, (_, number) =>
    caseLane(
      lane,
      there.filter((_, i) => i % CASE_LANES === number).map(({ id }) => id),
    ),
  ),
  wordLane(lane),
  indexLane(lane),
]);
