import { setTimeout } from 'node:timers/promises';
import { listWordEdits } from '../../../server/repositories/word-edit-repository';
import { changeWords, undoWords } from '../../../server/services/words/change-words';
import { type Lane, synonymKey } from './lane';

/** Each change has the casebook loaded and the index made anew: it leaves the others time to work. */
const PAUSE_MS = 120;
/** Changes in force, after which one is undone. */
const MOST_IN_FORCE = 4;

/** Adds synonyms to the vocabulary, and undoes some of them. */
export async function wordLane(lane: Lane): Promise<never> {
  const { db } = lane;
  for (let number = 1; ; number++) {
    const context = { actor: lane.moderator, now: lane.now, newId: lane.newId };
    const inForce = (await listWordEdits(db)).filter(({ undone }) => !undone);
    const oldest = inForce[0];
    if (inForce.length >= MOST_IN_FORCE && oldest?.edit.act === 'synonyms') {
      const key = synonymKey(oldest.edit.add[0] ?? '');
      lane.about(key, 'undo');
      await undoWords(db, oldest.revision, context);
      await lane.tell();
      lane.done(key, 'undone');
    } else {
      const text = `ash picture ${lane.seed} ${number}`;
      lane.about(synonymKey(text), 'add');
      const slug = lane.pick(['grey-screen', 'garbled-picture', 'no-sound']);
      const outcome = await changeWords(db, { act: 'synonyms', kind: 'symptom', slug, add: [text], remove: [] }, context);
      if (outcome.status !== 'done') throw new Error(`A good synonym was not taken: ${JSON.stringify(outcome)}`);
      await lane.tell();
      lane.done(synonymKey(text), 'in force');
    }
    await setTimeout(PAUSE_MS);
  }
}
