import { describe, expect, it } from 'vitest';
import { boardReadings } from '../../../shared/domain/browse/board-readings';
import { deviceView } from '../../../shared/domain/browse/device-view';
import { fixLines, fixView } from '../../../shared/domain/browse/fix-view';
import { partLines, partView } from '../../../shared/domain/browse/part-view';
import { symptomLines, symptomView } from '../../../shared/domain/browse/symptom-view';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import type { Board } from '../../../shared/schemas/device';
import { questionSchema } from '../../../shared/schemas/question';
import { plainCase } from '../../server/fixtures/plain-case';
import { smallCases } from '../../server/fixtures/small-cases';
import { smallCatalogue } from '../../server/fixtures/small-catalogue';
import { smallModel } from '../../server/fixtures/small-model';

const model = smallModel(smallCases(240));
const board = (slug: string) => smallCatalogue.models.flatMap((m) => m.boards).find((b) => b.slug === slug) as Board;

describe('symptomView', () => {
  it('ranks fixes and first checks as a look-up with this symptom alone does', () => {
    const view = symptomView(model, 'grey-screen', 'quellbrook-8');
    const asked = lookUp(
      model,
      questionSchema.parse({ set: [{ kind: 'symptom', id: 'grey-screen', value: 'present' }], device: 'quellbrook-8' }),
    );
    expect(view?.fixes.slice(0, 20)).toEqual(asked.fixes);
    expect(view?.firstChecks.map((c) => c.id)).toEqual(asked.nextChecks.slice(0, 5).map((c) => c.id));
    expect(view?.share.count).toBe(asked.cases.matchingOnDevice);
    expect(view?.device).toEqual({ id: 'quellbrook-8', label: 'Quellbrook 8' });
  });

  it('says nothing is known where there are no cases, and knows no symptom that is not there', () => {
    const empty = symptomView(smallModel(), 'grey-screen', null);
    expect(empty?.share).toEqual({ count: 0, of: 0, low: 0, high: 1 });
    expect([empty?.causes, empty?.fixes, empty?.devices, empty?.months]).toEqual([[], [], [], []]);
    expect(empty?.firstChecks.length).toBeGreaterThan(0);
    expect(symptomView(model, 'gremlins', null)).toBeNull();
  });

  it('names in the list the commonest cause that the page gives', () => {
    const line = symptomLines(model).find((l) => l.id === 'garbled-picture');
    const [first] = symptomView(model, 'garbled-picture', null)?.causes ?? [];
    expect(line?.leading).toMatchObject({ id: first?.id, count: first?.count, of: line?.cases });
    expect(symptomLines(model).find((l) => l.id === 'dead')?.leading).toBeNull();
  });
});

describe('partView', () => {
  it('brings boards with the very same part together, and keeps parts without a number to their own board', () => {
    const [regulator] = partView(model, 'voltage-regulator')?.places ?? [];
    expect(regulator).toMatchObject({ partNumber: '7805-type', package: 'TO-220', pins: 3 });
    expect(regulator?.boards.map((b) => b.id)).toEqual(['quellbrook-8-rev-a', 'quellbrook-8-rev-b', 'ormadic-duo-rev-1']);
    expect(partView(model, 'video-generator')?.places.map((place) => place.boards.length)).toEqual([1, 1, 1]);
    const [ram] = partView(model, 'video-ram')?.places ?? [];
    expect(ram?.boards[0]?.designators).toEqual(['U12', 'U13']);
  });

  it('never finds a part at fault more often where suspected than it was suspected', () => {
    for (const { id, cases } of partLines(model)) {
      const view = partView(model, id);
      expect(view?.share.count).toBe(cases);
      expect(view?.suspected.count).toBeLessThanOrEqual(view?.suspected.of ?? -1);
      expect(view?.failures.every((cause) => cause.role.id === id)).toBe(true);
    }
    expect(partView(model, 'gremlins')).toBeNull();
  });
});

describe('fixView', () => {
  it('counts its tries over devices as it counts them in all', () => {
    const view = fixView(model, 'replace-crystal');
    const sum = (rows: { tried: number }[]) => rows.reduce((total, row) => total + row.tried, 0);
    expect(view?.record.tried).toBeGreaterThan(20);
    expect(sum(view?.byDevice ?? [])).toBe(view?.record.tried);
    expect(view?.byCause.find((c) => c.id === 'video-generator-dead')?.resolved).toBe(0);
    expect(fixView(model, 'gremlins')).toBeNull();
  });

  it('lists those that were tried before those that never were', () => {
    const lines = fixLines(model);
    const never = lines.findIndex((line) => line.tried === 0);
    expect(never).toBeGreaterThan(0);
    expect(lines.slice(never).every((line) => line.tried === 0)).toBe(true);
    expect(lines.at(-1)?.id).toBe('swap-supply');
  });
});

describe('deviceView', () => {
  it('says what changed between revisions, part by part', () => {
    const [change] = deviceView(model, 'quellbrook-8', new Map())?.revisions ?? [];
    expect(change?.to.label).toBe('Quellbrook 8, revision B');
    expect(change?.parts.map(({ designator, kind }) => [designator, kind])).toEqual([
      ['U12', 'removed'],
      ['U13', 'removed'],
      ['U10', 'added'],
    ]);
  });

  it('calls a part a weak spot only where the category has other devices and the intervals are apart', () => {
    expect(deviceView(model, 'ormadic-duo', new Map())).toMatchObject({ weakSpots: [], categoryCases: 0 });
    const twin = { ...smallCatalogue.models[0]!, slug: 'quellbrook-9', name: 'Quellbrook 9', synonyms: [] };
    const boards = twin.boards.map((b) => ({ ...b, slug: b.slug.replace('8', '9') }));
    const catalogue = { models: [...smallCatalogue.models, { ...twin, boards }] };
    const on = (device: string, causes: string[]) => causes.map((cause, n) => ({ device, cause, n }));
    const [crystal, regulator] = ['clock-crystal-stopped', 'regulator-dead'];
    const drawn = [
      ...on('quellbrook-8-rev-a', [...Array(18).fill(crystal), ...Array(2).fill(regulator)]),
      ...on('quellbrook-9-rev-a', [...Array(4).fill(crystal), ...Array(16).fill(regulator)]),
    ];
    const records = drawn.map(({ device, cause }, n) => plainCase(n, { device, causes: [{ cause, designators: [] }] }));
    const view = deviceView(smallModel(records, catalogue), 'quellbrook-8', new Map());
    expect(view?.weakSpots.map(({ id, here, elsewhere }) => [id, here.count, here.of, elsewhere.count, elsewhere.of])).toEqual([
      ['clock-crystal', 18, 20, 4, 20],
    ]);
    expect(view?.categoryCases).toBe(20);
  });
});

describe('boardReadings', () => {
  it('names the pins by the part list and puts the parts in its order', () => {
    const at = { state: 'pulsing' as const, value: null, unit: null };
    const unit = {
      id: 'aaaaaaaaaaaaaaaa',
      device: 'quellbrook-8-rev-a',
      month: '2025-03',
      readings: [
        { designator: 'U1', pin: '3', ...at },
        { designator: 'U5', pin: '1', ...at },
        { designator: 'U5', pin: '9', ...at },
      ],
    };
    const { parts, units } = boardReadings(board('quellbrook-8-rev-a'), 'Quellbrook 8, revision A', [unit]);
    expect(units).toBe(1);
    expect(parts.map((part) => part.designator)).toEqual(['U5', 'U1']);
    expect(parts[0]?.pins.map((pin) => pin.name)).toEqual(['A0', null]);
    expect(parts[1]?.pins[0]?.name).toBe('OUT');
  });
});
