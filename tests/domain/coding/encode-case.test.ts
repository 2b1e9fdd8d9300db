import { describe, expect, it } from 'vitest';
import { demoWorld } from '../../../seed/demo-world';
import { CodingError, createCoding, decodeFinding, encodeFinding } from '../../../shared/domain/coding/coding';
import { encodeCase } from '../../../shared/domain/coding/encode-case';
import { encodeFindings } from '../../../shared/domain/coding/encode-findings';
import type { CaseContent } from '../../../shared/schemas/case';

const coding = createCoding(demoWorld.vocabulary, demoWorld.catalogue);
const board = 'quellbrook-8-rev-a';
const check = (slug: string, outcome: string) => ({
  kind: 'check' as const,
  check: slug,
  outcome,
  designator: null,
  value: null,
  unit: null,
});
const content: CaseContent = {
  device: board,
  month: '2024-05',
  symptoms: [{ symptom: 'grey-screen', present: true }],
  symptomsComplete: false,
  steps: [
    check('clock-at-processor', 'stuck'),
    { kind: 'fix', fixes: [{ fix: 'replace-work-ram', designator: null }], result: 'no-change' },
    check('crystal-oscillation', 'dead'),
    { kind: 'fix', fixes: [{ fix: 'replace-work-ram', designator: null }], result: 'cured' },
    check('clock-at-processor', 'pulsing'),
  ],
  readings: [],
  causes: [{ cause: 'crystal-dead', designators: [] }],
  proof: 'measurement',
  provedByStep: 2,
  outcome: 'resolved',
  afterRepairChecks: [],
  soakMinutes: null,
  narrative: '',
};
const named = (of: CaseContent) =>
  encodeCase(coding, of).findings.map((f) => ({ ...decodeFinding(coding, f), proves: f.proves, implied: f.implied }));

describe('encodeCase', () => {
  it('marks the check that proved the cause and the fix that cured, and leaves out what came after the cure', () => {
    const stated = named(content).filter((f) => !f.implied);
    expect(stated.map(({ id, value, proves }) => [id, value, proves])).toEqual([
      ['grey-screen', 'present', false],
      ['clock-at-processor', 'stuck', false],
      ['replace-work-ram', 'no-change', false],
      ['crystal-oscillation', 'dead', true],
      ['replace-work-ram', 'cured', true],
    ]);
  });

  it('keeps the device, the cause and the place of the proof among the proofs', () => {
    const record = encodeCase(coding, content);
    expect(coding.devices[record.device]?.slug).toBe(board);
    expect(record.causes).toEqual([coding.causeOf('crystal-dead')]);
    expect(record.proof).toBe(1);
    expect(encodeCase(coding, { ...content, causes: [], proof: null }).proof).toBe(-1);
  });

  it('implies of an incomplete list only that what would have hidden a stated symptom is absent', () => {
    const implied = named(content).filter((f) => f.implied);
    expect(implied.map(({ id, value }) => [id, value])).toContainEqual(['no-power', 'absent']);
    const hiders = coding.symptomHiders[coding.observableOf('symptom', 'grey-screen') as number] ?? [];
    for (const { id } of implied) expect(hiders).toContain(coding.observableOf('symptom', id));
    expect(named({ ...content, symptoms: [] }).some((f) => f.implied)).toBe(false);
  });

  it('says the same of a symptom stated as absent, and keeps what was stated of a hider', () => {
    const soundFine = { ...content, symptoms: [{ symptom: 'no-picture', present: false }] };
    expect(named(soundFine).find(({ id }) => id === 'no-power')).toMatchObject({ value: 'absent', implied: true });
    const both = { ...content, symptoms: [...soundFine.symptoms, { symptom: 'no-power', present: true }] };
    expect(named(both).filter(({ id }) => id === 'no-power')).toMatchObject([{ value: 'present', implied: false }]);
  });

  it('implies absences for a complete list, and none of a symptom that is hidden or cannot occur there', () => {
    const implied = named({ ...content, symptomsComplete: true }).filter((f) => f.implied);
    expect(implied.length).toBeGreaterThan(5);
    for (const { id, value } of implied) {
      const symptom = demoWorld.vocabulary.symptoms.find((s) => s.slug === id);
      expect(value).toBe('absent');
      expect(symptom?.hiddenBy).not.toContain('grey-screen');
      expect(symptom?.categories).toContain('home-computer');
    }
  });

  it('names everything that is not in the vocabulary', () => {
    const wrong = { ...content, device: 'no-such-board', causes: [{ cause: 'no-such-cause', designators: [] }] };
    expect(() => encodeCase(coding, wrong)).toThrow(CodingError);
    expect(() => encodeCase(coding, wrong)).toThrow(/no-such-board.*no-such-cause/);
  });
});

describe('encodeFindings', () => {
  it('gives back the same names through decodeFinding, for every value of the vocabulary', () => {
    coding.observables.forEach(({ kind, id, values }) => {
      for (const value of values) {
        const finding = { kind, id, value } as Parameters<typeof encodeFinding>[1];
        const coded = encodeFinding(coding, finding);
        expect(coded && decodeFinding(coding, coded)).toEqual(finding);
      }
    });
  });

  it('adds implied absences after what was stated, as a case with the same list would have them', () => {
    const coded = encodeFindings(coding, [{ kind: 'symptom', id: 'grey-screen', value: 'present' }], {
      complete: true,
      device: board,
    });
    const recordedAbsent = encodeCase(coding, { ...content, symptomsComplete: true })
      .findings.filter((f) => f.implied)
      .map((f) => f.observable);
    expect(coded[0]?.implied).toBe(false);
    expect(coded.slice(1).map((f) => f.observable)).toEqual(recordedAbsent);
  });

  it('refuses unknown names', () => {
    expect(() =>
      encodeFindings(coding, [{ kind: 'check', id: 'rail-5v', value: 'nonsense' }], { complete: false, device: null }),
    ).toThrow(CodingError);
  });
});

describe('createCoding', () => {
  it('gives boards the same part class for a cause only where the role carries the same part numbers', () => {
    const { layout, devices, vocabulary } = coding;
    const C = layout.causeCount;
    const numbers = (d: number, role: string) =>
      (devices[d]?.board?.parts ?? [])
        .filter((p) => p.role === role)
        .map((p) => p.partNumber)
        .sort()
        .join();
    const boards = devices.map((n, d) => ({ n, d })).filter(({ n }) => n.level === 'board');
    let shared = 0;
    for (const [c, cause] of vocabulary.causes.entries()) {
      for (const { d: a } of boards) {
        for (const { d: b } of boards) {
          const part = layout.partClasses[a * C + c] as number;
          if (a === b || part < 0 || part !== layout.partClasses[b * C + c]) continue;
          shared += 1;
          expect([...new Set(numbers(a, cause.role).split(','))]).toEqual([...new Set(numbers(b, cause.role).split(','))]);
        }
      }
    }
    expect(shared).toBeGreaterThan(0);
  });
});
