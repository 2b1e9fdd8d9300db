import { beforeAll, describe, expect, it, vi } from 'vitest';
import { demoWorld } from '../../../seed/demo-world';
import { addCase, type CasebookModel, createCasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { planRepair } from '../../../shared/domain/plan/plan-repair';
import { modelFromSnapshot, prepareWords, takeSnapshot } from '../../../shared/domain/snapshot/casebook-snapshot';
import { planOptionsSchema } from '../../../shared/schemas/plan';
import { questionSchema } from '../../../shared/schemas/question';
import { smallCases } from '../../server/fixtures/small-cases';
import { smallModel } from '../../server/fixtures/small-model';

// Whole look-ups of a whole casebook, four times over: seconds on a loaded machine.
vi.setConfig({ testTimeout: 60_000 });

const DEVICES = ['quellbrook-8-rev-a', 'quellbrook-8', 'ormadic-duo-rev-2', 'quellbrook-cm14-rev-1'];
const QUESTIONS = [
  { text: 'grey screen, clock present' },
  { text: 'dead, no power', complete: true },
  { text: 'garbled picture' },
  {
    text: '',
    set: [
      { kind: 'symptom', id: 'no-sound', value: 'present' },
      { kind: 'check', id: 'rails-short-test', value: 'not-shorted' },
    ],
  },
];

/** Through JSON, as it goes to the browser. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

describe('a snapshot', () => {
  let model: CasebookModel;
  let prepared: ReturnType<typeof prepareWords>;
  beforeAll(() => {
    const { vocabulary, catalogue } = demoWorld;
    model = createCasebookModel(vocabulary, catalogue);
    demoWorld.drawCases(5, 250).forEach(({ content }, i) => {
      addCase(model, { id: `case${String(i).padStart(12, 'a')}`, content, status: 'accepted' });
    });
    prepared = prepareWords(sent({ vocabulary, catalogue }));
  }, 60_000);

  it.each(DEVICES)('of %s gives the posterior of the whole casebook to 1e-9', (device) => {
    const small = modelFromSnapshot(prepared, sent(takeSnapshot(model, device)));
    for (const question of QUESTIONS) {
      const asked = questionSchema.parse({ ...question, device });
      const [whole, part] = [lookUp(model, asked), lookUp(small, asked)];
      expect(part.causes.length).toBeGreaterThan(20);
      part.causes.forEach((cause, i) => {
        const other = whole.causes[i];
        expect(Math.abs(cause.probability - (other?.probability ?? -1))).toBeLessThan(1e-9);
        expect(Math.abs(cause.low - (other?.low ?? -1))).toBeLessThan(1e-9);
        expect(Math.abs(cause.high - (other?.high ?? -1))).toBeLessThan(1e-9);
      });
      // Counts, evidence, next checks and fixes are the same to the last digit.
      const { similar: _, ...rest } = part;
      expect(rest).toEqual({ ...whole, similar: undefined });
    }
  });

  it('gives the same plan', () => {
    const small = modelFromSnapshot(prepared, sent(takeSnapshot(model, 'quellbrook-8-rev-a')));
    const asked = questionSchema.parse({ text: 'grey screen, clock present', device: 'quellbrook-8-rev-a' });
    const options = planOptionsSchema.parse({});
    expect(planRepair(small, asked, options)).toEqual(planRepair(model, asked, options));
  });

  it('leaves out ids, months and texts of the cases', () => {
    const text = JSON.stringify(takeSnapshot(model, 'quellbrook-8-rev-a'));
    for (const entry of [...model.entries.values()].slice(0, 50)) {
      expect(text).not.toContain(entry.id);
    }
  });
});

describe('a snapshot that does not fit', () => {
  const prepared = prepareWords({ vocabulary: smallModel().coding.vocabulary, catalogue: smallModel().coding.catalogue });
  const snapshot = takeSnapshot(smallModel(smallCases(5)), 'quellbrook-8-rev-a');

  it('is refused: another version, a broken pack, an unknown device', () => {
    expect(() => modelFromSnapshot(prepared, { ...snapshot, version: 99 })).toThrow(/version 99/);
    expect(() => modelFromSnapshot(prepared, { ...snapshot, records: snapshot.records.slice(0, -1) })).toThrow(RangeError);
    expect(() => takeSnapshot(smallModel(), 'gremlin-8')).toThrow(/gremlin-8/);
  });
});
