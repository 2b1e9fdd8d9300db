import { expect, it } from 'vitest';
import { findCase } from '../../../server/repositories/case-repository';
import { replaceContent } from '../../../server/repositories/submission-contents';
import { waitingWorld } from './waiting-world';

const STORY = 'No pulse at the processor and a grey picture; a new crystal from the drawer cured it at once.';

it('a case told twice is found again, from what was compared before too, and as it reads once it was changed', async () => {
  const { moderator, db, id, post } = await waitingWorld({ narrative: STORY });
  const twin = await post({ narrative: `${STORY} It held.` });
  const likest = async () => (await moderator.review.item({ id: twin })).machine?.duplicates[0];
  const first = await likest();
  expect(first).toMatchObject({ view: { id, narrative: STORY }, likeness: { findings: 1, sameCause: true } });
  expect(first?.likeness.wording).toBeGreaterThan(0.7);
  expect(await likest()).toEqual(first);
  const record = await findCase(db, id);
  if (record === null) throw new Error('It is stored.');
  const anew = { ...record.content, narrative: 'Written anew from end to end.' };
  await replaceContent(db, id, record.status, anew);
  const later = await likest();
  expect(later).toMatchObject({ view: { id, narrative: anew.narrative }, likeness: { wording: 0 } });
});
