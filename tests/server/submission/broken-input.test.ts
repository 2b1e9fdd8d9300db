import { TRPCError } from '@trpc/server';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ZodError } from 'zod';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import type { DraftDocument } from '../../../shared/schemas/submission';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fullForm, posting } from './posting';

type World = Awaited<ReturnType<typeof posting>>;
let caller: Awaited<ReturnType<World['as']>>;
let db: World['db'];
let opened: TestDatabase;
beforeAll(async () => {
  opened = openTestDatabase();
  const world = await posting([], opened.db);
  db = world.db;
  caller = await world.as('one');
});
beforeEach(forgetSubmitLimits);
afterEach(() => db.caseFile.deleteMany());
afterAll(() => opened.close());

type Problem = { field: string; reason: string };

/** What the procedure says about this form: problems it returns, or what the door refuses; a fault of ours is thrown. */
async function problemsOf(document: unknown): Promise<Problem[]> {
  try {
    const outcome = await caller.submission.submit({ draftId: null, document: document as DraftDocument });
    return outcome.kind === 'problems' ? outcome.problems : [];
  } catch (error) {
    if (!(error instanceof TRPCError && error.cause instanceof ZodError)) throw error;
    return error.cause.issues.map((i) => ({ field: i.path.slice(1).join('.'), reason: i.message }));
  }
}

const check = (over: object) => ({
  steps: [{ key: 'a', kind: 'check', check: 'supply-apart', outcome: 'low', designator: '', reading: '', ...over }],
  provedBy: '',
});
const fix = (over: object) => ({
  steps: [{ key: 'b', kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: '' }], result: 'cured', ...over }],
  provedBy: '',
});
const cause = (over: object) => ({ causes: [{ cause: 'clock-crystal-stopped', designators: '', ...over }] });
const word = (over: object) => ({
  proposals: [{ key: 'p', kind: 'symptom', word: 'Rolling stripes', meaning: 'Stripes that wander up the picture.', ...over }],
});
const reading = (over: object) => ({ readings: [{ key: 'r', designator: 'U5', pin: '3', reading: 'high', ...over }] });
const photo = (over: object) => ({ photos: [{ id: 'aaaaaaaaaaaaaaaa', alt: 'The board from above', ...over }] });
const many = <T>(count: number, make: (i: number) => T) => Array.from({ length: count }, (_, i) => make(i));

/** What is sent over a good form, the field that the error stands at, and what it says. */
const TABLE: [string, object, string, RegExp][] = [
  ['no device', { device: '' }, 'device', /choose the device/i],
  ['a device that is not there', { device: 'no-such-thing' }, 'device', /no device "no-such-thing"/],
  ['a device in capitals', { device: 'Quellbrook 8' }, 'device', /from the list/],
  ['a device that is a number', { device: 8 }, 'device', /./],
  ['a device that is null', { device: null }, 'device', /./],
  ['a prototype as device', { device: '__proto__' }, 'device', /from the list/],
  ['a statement of SQL as device', { device: "'; DROP TABLE CaseFile; --" }, 'device', /from the list/],
  ['a path as device', { device: '../../etc/passwd' }, 'device', /from the list/],
  ['constructor as device', { device: 'constructor' }, 'device', /no device "constructor"/],
  ['no month', { month: '' }, 'month', /YYYY-MM/],
  ['a day', { month: '2025-03-14' }, 'month', /YYYY-MM/],
  ['month 13', { month: '2025-13' }, 'month', /YYYY-MM/],
  ['month 00', { month: '2025-00' }, 'month', /YYYY-MM/],
  ['a month in words', { month: 'March 2025' }, 'month', /YYYY-MM/],
  ['a month to come', { month: '2099-12' }, 'month', /not come yet/],
  ['a month long ago', { month: '1901-01' }, 'month', /1990-01/],
  ['a month of a thousand characters', { month: '1'.repeat(1000) }, 'month', /characters/],
  ['no symptom', { symptoms: [] }, 'symptoms', /at least one/],
  ['absent symptoms alone', { symptoms: [{ symptom: 'no-sound', present: false }] }, 'symptoms', /at least one/],
  ['an unknown symptom', { symptoms: [{ symptom: 'haunted', present: true }] }, 'symptoms.0.symptom', /no symptom "haunted"/],
  ['a symptom twice', { symptoms: many(2, () => ({ symptom: 'dead', present: true })) }, 'symptoms.1.symptom', /twice/],
  ['a symptom neither here nor there', { symptoms: [{ symptom: 'dead', present: 'maybe' }] }, 'symptoms.0.present', /./],
  ['too many symptoms', { symptoms: many(61, (i) => ({ symptom: `s-${i}`, present: true })) }, 'symptoms', /60/],
  ['symptoms as one text', { symptoms: 'grey screen' }, 'symptoms', /./],
  ['"complete" as a text', { symptomsComplete: 'yes' }, 'symptomsComplete', /./],
  ['nothing done and nothing found', { steps: [], causes: [], proof: '', provedBy: '' }, 'steps', /at least one check or fix/],
  ['too many steps', { steps: many(121, (i) => ({ ...check({}).steps[0], key: `k${i}` })) }, 'steps', /120/],
  ['a step of another kind', { steps: [{ key: 'a', kind: 'prayer' }] }, 'steps.0.kind', /./],
  ['a step without a key', check({ key: '' }), 'steps.0.key', /load the page again/i],
  ['no check chosen', check({ check: '' }), 'steps.0.check', /choose the check/i],
  ['an unknown check', check({ check: 'divining-rod' }), 'steps.0.check', /no check "divining-rod"/],
  ['no outcome', check({ outcome: '' }), 'steps.0.outcome', /what the check showed/],
  ['an outcome of another check', check({ outcome: 'pulsing' }), 'steps.0.outcome', /no outcome "pulsing".*in-tolerance/],
  ['a reading that is a word', check({ reading: 'lots' }), 'steps.0.reading', /number with its unit/],
  ['a reading without end', check({ reading: '9'.repeat(41) }), 'steps.0.reading', /characters/],
  ['a reading of 400 digits', check({ reading: '9'.repeat(40) }), 'steps.0.reading', /number with its unit/],
  ['a reading that is not a number', check({ reading: 'NaN V' }), 'steps.0.reading', /number with its unit/],
  ['a reading in infinity', check({ reading: 'Infinity' }), 'steps.0.reading', /./],
  ['a reading in another quantity', check({ reading: '5 kOhm' }), 'steps.0.reading', /measures something else/],
  [
    'a reading in no unit at all',
    check({ check: 'clock-at-processor', outcome: 'pulsing', reading: '5' }),
    'steps.0.reading',
    /write the unit/i,
  ],
  ['a reading with a tail', check({ reading: '5 V <script>' }), 'steps.0.reading', /cannot be read/],
  ['a designator that is none', check({ designator: 'the big chip' }), 'steps.0.designator', /designator/],
  ['two parts for one check', check({ designator: 'U1 U5' }), 'steps.0.designator', /one part/],
  ['a part that is not on the board', check({ designator: 'U99' }), 'steps.0.designator', /no U99 on Quellbrook 8, revision A/],
  ['a part of the other board', check({ designator: 'U10' }), 'steps.0.designator', /no U10/],
  [
    'a check that the board has no part for',
    { device: 'quellbrook-8-rev-b', ...check({ check: 'video-ram-data', outcome: 'one-stuck' }) },
    'steps.0.check',
    /nothing that this check looks at/,
  ],
  ['no fix chosen', fix({ fixes: [{ fix: '', designator: '' }] }), 'steps.0.fixes.0.fix', /choose the fix/i],
  ['an attempt of no fix', fix({ fixes: [] }), 'steps.0.fixes', /./],
  ['an attempt of nine fixes', fix({ fixes: many(9, () => ({ fix: 'replace-crystal', designator: '' })) }), 'steps.0.fixes', /8/],
  ['an unknown fix', fix({ fixes: [{ fix: 'percussive-repair', designator: '' }] }), 'steps.0.fixes.0.fix', /no fix/],
  [
    'a fix twice in one attempt',
    fix({ fixes: many(2, () => ({ fix: 'replace-crystal', designator: '' })) }),
    'steps.0.fixes.1.fix',
    /twice/,
  ],
  [
    'a fix on a part not there',
    fix({ fixes: [{ fix: 'replace-crystal', designator: 'Y9' }] }),
    'steps.0.fixes.0.designator',
    /no Y9/,
  ],
  ['no result', fix({ result: '' }), 'steps.0.result', /what the fix changed/],
  ['a result of another world', fix({ result: 'miracle' }), 'steps.0.result', /no-change/],
  ['an unknown cause', cause({ cause: 'gremlins' }), 'causes.0.cause', /no cause "gremlins"/],
  ['a cause twice', { causes: many(2, () => ({ cause: 'supply-dead', designators: '' })) }, 'causes.1.cause', /twice/],
  ['too many causes', { causes: many(7, (i) => ({ cause: `c-${i}`, designators: '' })) }, 'causes', /6/],
  ['a cause at a part not there', cause({ designators: 'Y1, Y77' }), 'causes.0.designators', /no Y77/],
  ['a cause at words', cause({ designators: 'near the edge' }), 'causes.0.designators', /designator/],
  ['a cause without proof', { proof: '' }, 'proof', /how the cause was proved/],
  ['a proof without a cause', { causes: [], proof: 'measurement' }, 'proof', /name the cause/i],
  ['a proof of another kind', { proof: 'hearsay' }, 'proof', /substitution/],
  ['proved by a fix', { provedBy: 'b' }, 'provedBy', /one of the checks/],
  ['proved by a row that is gone', { provedBy: 'zz' }, 'provedBy', /one of the checks/],
  ['no ending', { outcome: '' }, 'outcome', /how the repair ended/],
  ['an ending of another kind', { outcome: 'happy' }, 'outcome', /resolved/],
  ['an unknown check after the repair', { afterRepairChecks: ['seance'] }, 'afterRepairChecks.0', /no check "seance"/],
  ['a check after the repair twice', { afterRepairChecks: ['supply-apart', 'supply-apart'] }, 'afterRepairChecks.1', /twice/],
  ['too many checks after the repair', { afterRepairChecks: many(21, (i) => `c-${i}`) }, 'afterRepairChecks', /20/],
  ['a soak time in words', { soakMinutes: 'an hour' }, 'soakMinutes', /whole minutes/],
  ['a soak time below zero', { soakMinutes: '-5' }, 'soakMinutes', /whole minutes/],
  ['a soak time in halves', { soakMinutes: '1.5' }, 'soakMinutes', /whole minutes/],
  ['a soak time of months', { soakMinutes: '999999' }, 'soakMinutes', /100000/],
  ['a soak time in powers', { soakMinutes: '1e3' }, 'soakMinutes', /whole minutes/],
  ['a narrative without end', { narrative: 'x'.repeat(6001) }, 'narrative', /6001 characters/],
  ['a narrative that is a list', { narrative: ['a'] }, 'narrative', /./],
  ['own words without end', { ownWords: 'x'.repeat(2001) }, 'ownWords', /characters/],
  ['a reading at no part', reading({ designator: ' ' }), 'readings.0.designator', /name the part/i],
  ['a reading at a part that is not on the board', reading({ designator: 'U99' }), 'readings.0.designator', /no U99/],
  ['a reading at no pin', reading({ pin: '' }), 'readings.0.pin', /pin/],
  ['a pin without end', reading({ pin: '3'.repeat(17) }), 'readings.0.pin', /17 characters/],
  ['a reading that was not taken', reading({ reading: '' }), 'readings.0.reading', /remove this row/],
  ['a reading that is no state', reading({ reading: 'warm' }), 'readings.0.reading', /high, low, pulsing or floating/],
  ['a reading without a unit', reading({ reading: '4.62' }), 'readings.0.reading', /unit/],
  ['an overload at a pin', reading({ reading: 'OL' }), 'readings.0.reading', /high, low, pulsing or floating/],
  ['too many readings', { readings: many(401, (i) => ({ ...reading({}).readings[0], key: `r${i}` })) }, 'readings', /400/],
  ['a photo without words', photo({ alt: '  ' }), 'photos.0.alt', /what the photo shows/],
  ['a photo with words without end', photo({ alt: 'x'.repeat(301) }), 'photos.0.alt', /301 characters/],
  ['a photo that is not there', photo({}), 'photos.0', /not there any more/],
  ['a photo by a path', photo({ id: '../../etc/passwd' }), 'photos.0.id', /16 letters/],
  ['too many photos', { photos: many(7, () => photo({}).photos[0]) }, 'photos', /6/],
  ['a proposed word of one letter', word({ word: 'x' }), 'proposals.0.word', /3 letters/],
  ['a proposed word without meaning', word({ meaning: '' }), 'proposals.0.meaning', /what it means/],
  ['a proposed word without end', word({ word: 'x'.repeat(81) }), 'proposals.0.word', /characters/],
  ['a proposal of another kind', word({ kind: 'device' }), 'proposals.0.kind', /./],
  ['a word proposed twice', { proposals: many(2, () => word({}).proposals[0]) }, 'proposals.1.word', /twice/],
  ['too many proposals', { proposals: many(9, (i) => ({ ...word({}).proposals[0], word: `Word ${i}` })) }, 'proposals', /8/],
  ['too much kept', { kept: many(61, (i) => `k${i}`) }, 'kept', /60/],
];

describe('submission.submit on broken input', () => {
  it.each(TABLE)('says at its field what is wrong with %s', async (_, over, field, says) => {
    const problems = await problemsOf({ ...fullForm(), ...over });
    const here = problems.filter((p) => p.field === field).map((p) => p.reason);
    expect(here, JSON.stringify(problems)).not.toEqual([]);
    expect(here.join(' ')).toMatch(says);
    expect(await db.caseFile.count()).toBe(0);
  });

  it('has a table of at least sixty', () => expect(TABLE.length).toBeGreaterThanOrEqual(60));

  it.each([null, undefined, 7, 'x', [], {}])('refuses a document that is none: %j', async (document) => {
    expect((await problemsOf(document)).length).toBeGreaterThan(0);
  });

  it('names every field that is wrong at once', async () => {
    const problems = await problemsOf({ ...fullForm(), device: '', outcome: '', soakMinutes: 'x', ...check({ outcome: '' }) });
    expect(problems.map((p) => p.field)).toEqual(expect.arrayContaining(['device', 'outcome', 'soakMinutes', 'steps.0.outcome']));
  });

  it('takes texts that only look dangerous as what they are: text', async () => {
    const narrative = `Robert'); DROP TABLE CaseFile;-- <script>alert(1)</script> \u202e {{7*7}} \u0000 end`;
    const outcome = await caller.submission.submit({ draftId: null, document: fullForm({ narrative, kept: ['Robert'] }) });
    expect(['submitted', 'details']).toContain(outcome.kind);
    expect(await db.caseFile.count()).toBeLessThanOrEqual(1);
  });

  it.each(['', 'x', 'AAAAAAAAAAAAAAAA', '../../etc/passwd'])('refuses an id that is none: %j', async (id) => {
    for (const ask of [
      caller.submission.withdraw,
      caller.submission.cutLink,
      caller.submission.startChanges,
      caller.submission.discardDraft,
    ]) {
      await expect(ask({ id })).rejects.toMatchObject({ code: 'BAD_REQUEST' });
    }
  });
});
