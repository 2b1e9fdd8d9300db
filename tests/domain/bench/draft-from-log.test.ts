import { describe, expect, it } from 'vitest';
import { findingsOf, standing } from '../../../shared/domain/bench/bench-log';
import { draftFromLog } from '../../../shared/domain/bench/draft-from-log';
import { afterRepairChecks } from '../../../shared/domain/bench/after-repair';
import { contentOfDraft } from '../../../shared/domain/submission/content-of-draft';
import { draftOfContent } from '../../../shared/domain/submission/draft-of-content';
import type { BenchEntry, BenchUnit, EntryBody } from '../../../shared/schemas/bench';
import { vocabulary } from '../../../seed/vocabulary';
import { catalogue } from '../../../seed/catalogue';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';

const words = vocabularyWords(vocabulary, catalogue);
const writer = 'b'.repeat(16);
const unit: BenchUnit = {
  id: 'u'.repeat(16),
  at: 0,
  device: 'quellbrook-8-rev-a',
  label: 'blue one',
  complete: true,
  working: false,
  closedAt: null,
  clock: 1,
  by: writer,
  deleted: false,
};
const entry = (at: number, body: EntryBody, deleted = false): BenchEntry => ({
  id: `e${at}`.padEnd(16, 'a'),
  unitId: unit.id,
  at,
  body,
  clock: 1,
  by: writer,
  deleted,
});
const fix = words.fixes.get('replace-voltage-regulator') ?? [...words.fixes.values()].find((f) => f.addresses.length === 1)!;
const log: BenchEntry[] = [
  entry(4, { kind: 'fix', fixes: [{ fix: fix.slug, designator: 'VR1' }], result: 'cured' }),
  entry(1, { kind: 'symptom', symptom: 'grey-screen', present: true }),
  entry(2, { kind: 'check', check: 'rail-5v', outcome: 'low', designator: '', reading: '4.1 V' }),
  entry(3, { kind: 'note', text: 'Regulator was hot.' }),
  entry(5, { kind: 'pin', reading: { designator: 'U1', pin: '11', state: 'low', value: null, unit: null } }),
  entry(6, { kind: 'pin', reading: { designator: 'U1', pin: '11', state: 'high', value: null, unit: null } }),
  entry(7, { kind: 'after', check: 'rails-short-test', passed: true }),
  entry(8, { kind: 'after', check: 'rail-5v', passed: false }),
  entry(9, { kind: 'soak', minutes: 90 }),
  entry(10, { kind: 'note', text: 'Never written.' }, true),
];
let keys = 0;
const draft = () => draftFromLog(words, { unit, entries: standing(log, unit.id), month: '2026-11', newKey: () => `k${keys++}` });

describe('a bench log', () => {
  it('becomes the posting form: steps in their order, failed checks of the list left out, deleted entries gone', () => {
    const form = draft();
    expect(form.symptoms).toEqual([{ symptom: 'grey-screen', present: true }]);
    expect(form.steps.map((step) => step.kind)).toEqual(['check', 'fix']);
    expect(form).toMatchObject({ outcome: 'resolved', afterRepairChecks: ['rails-short-test'], soakMinutes: '90', narrative: 'Regulator was hot.' });
    expect(form.readings).toMatchObject([{ designator: 'U1', pin: '11', reading: 'high' }]);
    expect(JSON.stringify(form)).not.toContain('blue one');
  });

  it('comes back from a stored case with its readings', () => {
    const { content, problems } = contentOfDraft(words, { ...draft(), causes: [], proof: '' });
    expect(problems).toEqual([]);
    expect(content && draftOfContent(content, [], () => 'k').readings).toHaveLength(1);
  });

  it('says to the statistics what was found last', () => {
    const again = [...log, entry(20, { kind: 'check', check: 'rail-5v', outcome: 'in-tolerance', designator: '', reading: '' })];
    const checks = findingsOf(standing(again, unit.id)).filter((f) => f.kind === 'check');
    expect(checks).toEqual([{ kind: 'check', id: 'rail-5v', value: 'in-tolerance' }]);
  });

  it('has a checklist after the repair: shorts before power, the voltages, what had shown the fault', () => {
    const slugs = afterRepairChecks(words, unit.device, standing(log, unit.id)).map((check) => check.slug);
    expect(slugs.slice(0, 2)).toEqual(['rails-short-test', 'rail-5v']);
    expect(new Set(slugs).size).toBe(slugs.length);
  });
});
