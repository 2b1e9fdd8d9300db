import { describe, expect, it } from 'vitest';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { listCaseChanges } from '../../../server/repositories/case-change-repository';
import { listCases } from '../../../server/repositories/case-repository';
import { loadVocabulary } from '../../../server/repositories/load-vocabulary';
import { saveVocabulary } from '../../../server/repositories/save-vocabulary';
import { verifyLog } from '../../../server/services/log/verify-log';
import { changeWords, undoWords } from '../../../server/services/words/change-words';
import { randomCaseId } from '../../../server/ids';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { questionSchema } from '../../../shared/schemas/question';
import type { WordChange } from '../../../shared/schemas/word-edit';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { smallVocabulary } from '../fixtures/small-vocabulary';
import { addPerson, wholeLog } from '../log/log-world';

const MERGE = { act: 'merge', kind: 'symptom', from: 'grey-screen', into: 'garbled-picture' } as const;
const context = { actor: { id: 'mod', role: 'moderator' } as const, now: new Date('2026-03-04T05:06:07Z'), newId: randomCaseId };

async function world(cases = 40) {
  const { db } = testDatabase();
  await fillDatabase(db, smallCases(cases));
  await addPerson(db, 'mod');
  const change = async (asked: WordChange) => {
    const outcome = await changeWords(db, asked, context);
    if (outcome.status !== 'done') throw new Error(JSON.stringify(outcome.fields));
    return outcome.revision;
  };
  return { db, change };
}

/** What a look-up says and what is counted: everything that a merge may move. */
async function standing(db: Parameters<typeof loadCasebook>[0]) {
  const { model } = await loadCasebook(db);
  const ask = (id: string) => lookUp(model, questionSchema.parse({ text: '', set: [{ kind: 'symptom', id, value: 'present' }] }));
  const cells = serialiseCounts(model.counts);
  return {
    vocabulary: model.coding.vocabulary,
    cells,
    grey: ask('grey-screen'),
    garbled: ask('garbled-picture'),
    cases: await listCases(db),
  };
}

describe('a merge of two symptoms', () => {
  it('shows in the look-up, and its undo gives back exactly what was there', async () => {
    const { db, change } = await world();
    const before = await standing(db);
    const stored = await db.caseSymptom.findMany();
    const revision = await change(MERGE);

    const merged = await standing(db);
    expect(merged.grey.read.findings.map(({ id }) => id)).toEqual(['garbled-picture']);
    expect(merged.grey).toEqual(merged.garbled);
    const either = before.cases.filter(({ content }) => content.symptoms.some(({ present }) => present)).length;
    expect(merged.garbled.cases.matching).toBe(either);
    expect(before.garbled.cases.matching).toBeLessThan(either);
    expect(merged.cases.flatMap(({ content }) => content.symptoms.map(({ symptom }) => symptom))).not.toContain('grey-screen');
    // The cases themselves were not touched.
    expect(await db.caseSymptom.findMany()).toEqual(stored);

    await undoWords(db, revision, context);
    expect(await standing(db)).toEqual(before);
  });

  it('tells the followers of every case that reads differently, and the log, both times', async () => {
    const { db, change } = await world(10);
    const start = (await listCaseChanges(db, { after: 0, take: 1000 })).at(-1)?.seq ?? 0;
    const revision = await change(MERGE);
    await undoWords(db, revision, context);
    const told = (await listCaseChanges(db, { after: start, take: 1000 })).map(({ caseId }) => caseId);
    expect(told).toHaveLength(20);
    expect(new Set(told)).toEqual(new Set(smallCases(10).map(({ id }) => id)));
    const log = await wholeLog(db);
    expect(log.map(({ kind }) => kind)).toEqual(['words-merged', 'merge-undone']);
    expect(await verifyLog(log)).toMatchObject({ intact: true });
    expect((await db.eventLog.findMany({ where: { kind: 'vocabulary' } })).length).toBe(2);
  });

  it('is undone once: a second undo finds nothing', async () => {
    const { db, change } = await world(5);
    const revision = await change(MERGE);
    await undoWords(db, revision, context);
    await expect(undoWords(db, revision, context)).rejects.toMatchObject({ code: 'entry-not-found' });
  });
});

describe('changes of the vocabulary', () => {
  it('stay when the program starts again and stores what ships', async () => {
    const { db, change } = await world(5);
    await change({
      act: 'add',
      kind: 'symptom',
      like: 'grey-screen',
      label: 'Snow all over',
      meaning: 'Noise, all over the picture.',
      synonyms: ['blizzard'],
    });
    await change({
      act: 'reword',
      kind: 'symptom',
      slug: 'grey-screen',
      label: 'Plain grey screen',
      meaning: 'Nothing but an even grey.',
    });
    await change({ act: 'synonyms', kind: 'cause', slug: 'regulator-dead', add: ['regulator gone'], remove: [] });
    await change(MERGE);
    const before = await loadVocabulary(db);
    await db.$transaction((tx) => saveVocabulary(tx, smallVocabulary));
    expect(await loadVocabulary(db)).toEqual(before);
    const { model } = await loadCasebook(db);
    expect(model.read('blizzard').findings).toMatchObject([{ kind: 'symptom', id: 'snow-all-over', value: 'present' }]);
  });

  it.each(['symptom', 'check', 'cause', 'fix'] as const)(
    'add a %s that cases can name, and can take it away while none does',
    async (kind) => {
      const { db, change } = await world(1);
      const like = { symptom: 'grey-screen', check: 'clock-at-processor', cause: 'regulator-dead', fix: 'replace-crystal' }[kind];
      const before = await loadVocabulary(db);
      const revision = await change({
        act: 'add',
        kind,
        like,
        label: 'Something new',
        meaning: 'It was never seen before.',
        synonyms: [],
      });
      await loadCasebook(db);
      if (kind === 'symptom') {
        const caseId = smallCases(1)[0]?.id ?? '';
        await db.caseSymptom.create({ data: { caseId, position: 9, symptomSlug: 'something-new', present: true } });
        expect(await undoWords(db, revision, context)).toMatchObject({ status: 'refused' });
        await db.caseSymptom.delete({ where: { caseId_position: { caseId, position: 9 } } });
      }
      expect(await undoWords(db, revision, context)).toMatchObject({ status: 'done' });
      expect(await loadVocabulary(db)).toEqual(before);
    },
  );

  it('take a retired entry out of what is read and offered, and leave its cases counted', async () => {
    const { db, change } = await world(20);
    const before = await loadCasebook(db);
    await change({ act: 'retire', kind: 'symptom', slug: 'grey-screen' });
    const { model } = await loadCasebook(db);
    expect(model.read('grey screen').findings).toEqual([]);
    expect(serialiseCounts(model.counts)).toEqual(serialiseCounts(before.model.counts));
  });

  it('are refused at their field, and then nothing is stored', async () => {
    const { db } = await world(1);
    const refused = await changeWords(db, { ...MERGE, into: 'grey-screen' }, context);
    expect(refused).toMatchObject({ status: 'refused', fields: { into: expect.any(String) } });
    expect(await wholeLog(db)).toEqual([]);
    expect(await db.vocabularyEdit.count()).toBe(0);
  });
});
