import { describe, expect, it } from 'vitest';
import { smallCases } from '../fixtures/small-cases';
import { memoryCaller } from './test-caller';

const total = (causes: { probability: number }[], unlisted: number) => causes.reduce((sum, c) => sum + c.probability, unlisted);

describe('lookup.ask', () => {
  it('reads the words, and gives causes that are sorted and sum to 1 with the unlisted share', async () => {
    const caller = memoryCaller(smallCases(400));
    const result = await caller.lookup.ask({ text: 'grey screen, clock present', device: 'quellbrook-8-rev-a' });
    expect(result.read.findings.map(({ kind, id, value }) => [kind, id, value])).toEqual([
      ['symptom', 'grey-screen', 'present'],
      ['check', 'clock-at-processor', 'pulsing'],
    ]);
    expect(total(result.causes, result.unlisted.probability)).toBeCloseTo(1, 9);
    const sorted = [...result.causes].sort((a, b) => b.probability - a.probability);
    expect(result.causes).toEqual(sorted);
    for (const { low, probability, high } of result.causes) {
      expect(low).toBeLessThanOrEqual(probability);
      expect(probability).toBeLessThanOrEqual(high);
    }
  });

  it('counts matching records as a count by hand over the same cases does', async () => {
    const cases = smallCases(400);
    const caller = memoryCaller(cases);
    const result = await caller.lookup.ask({ text: 'grey screen, clock present' });
    const carries = cases.filter(
      ({ content }) =>
        content.symptoms.some((s) => s.symptom === 'grey-screen' && s.present) &&
        content.steps.some((s) => s.kind === 'check' && s.check === 'clock-at-processor' && s.outcome === 'pulsing'),
    );
    expect(carries.length).toBeGreaterThan(20);
    expect(result.cases).toMatchObject({ total: 400, matching: carries.length });
    const generator = carries.filter((c) => c.content.causes[0]?.cause === 'video-generator-dead');
    const row = result.causes.find((c) => c.id === 'video-generator-dead');
    expect(row?.matching).toBe(generator.length);
    expect(row?.matchingByProof).toEqual({
      substitution: generator.filter((c) => c.content.proof === 'substitution').length,
      measurement: 0,
      repairHeld: generator.filter((c) => c.content.proof === 'repair-held').length,
      suspected: 0,
    });
    expect(result.cases.causeNotFound).toBe(carries.filter((c) => c.content.causes.length === 0).length);
  });

  it('explains each leading cause without remainder, for and against', async () => {
    const caller = memoryCaller(smallCases(400));
    const result = await caller.lookup.ask({ text: 'grey screen, clock present', complete: true });
    const odds = (p: number) => 10 * Math.log10(p / (1 - p));
    for (const cause of result.causes) {
      if (!cause.against || !cause.againstAll) throw new Error(`${cause.id} is not explained.`);
      const { prior, items, total } = cause.against;
      expect(items.reduce((sum, item) => sum + item.weight, prior)).toBeCloseTo(total, 9);
      const all = cause.againstAll;
      const sum = all.items.reduce((s, item) => s + item.weight, all.prior + all.interaction + all.mixing);
      expect(sum).toBeCloseTo(all.total, 9);
      expect(all.total).toBeCloseTo(odds(cause.probability), 6);
    }
    const implied = result.causes[0]?.against?.items.filter((item) => item.implied).map((item) => item.finding.id);
    expect(implied).toContain('no-sound');
  });

  it('applies what was changed after the words were read', async () => {
    const caller = memoryCaller(smallCases(60));
    const changed = await caller.lookup.ask({
      text: 'grey screen, clock present, silent',
      set: [{ kind: 'check', id: 'clock-at-processor', value: 'absent' }],
      without: [{ kind: 'symptom', id: 'no-sound' }],
    });
    const plain = await caller.lookup.ask({ text: 'grey screen, no clock' });
    expect(changed.read.findings.map((f) => `${f.id} ${f.value}`)).toEqual(['grey-screen present', 'clock-at-processor absent']);
    expect(changed.read.findings[1]?.text).toBe('clock present');
    expect(changed.causes.map((c) => [c.id, c.probability])).toEqual(plain.causes.map((c) => [c.id, c.probability]));
  });

  it('keeps what it could not read and what it does not know, instead of dropping it', async () => {
    const caller = memoryCaller(smallCases(20));
    const result = await caller.lookup.ask({
      text: 'grey screen, zorble',
      set: [{ kind: 'symptom', id: 'on-fire', value: 'present' }],
    });
    expect(result.read.unread.map((span) => span.text)).toEqual(['zorble', 'on-fire present']);
  });

  it('splits a role over the designators of the board as the cases named them', async () => {
    const rams = ['U12', 'U12', 'U12', 'U13'];
    const base = smallCases(200);
    const named = rams.map((designator, i) => {
      const record = structuredClone(base[i]);
      if (!record) throw new Error('Too few cases.');
      record.content.device = 'quellbrook-8-rev-a';
      record.content.causes = [{ cause: 'video-ram-stuck-bit', designators: [designator] }];
      record.content.proof = 'measurement';
      return record;
    });
    const caller = memoryCaller([...named, ...base.slice(4)]);
    const result = await caller.lookup.ask({ text: 'garbled picture', device: 'quellbrook-8-rev-a' });
    // Three and one cases, half a case for each of the two parts: 3.5 of 5 and 1.5 of 5.
    expect(result.causes.find((c) => c.id === 'video-ram-stuck-bit')?.designators).toEqual([
      { designator: 'U12', probability: 0.7, cases: 3 },
      { designator: 'U13', probability: 0.3, cases: 1 },
    ]);
  });

  it('suggests checks by stage, none that is done, impossible on the board or waits for another', async () => {
    const caller = memoryCaller(smallCases(400));
    const revB = await caller.lookup.ask({ text: 'grey screen', device: 'quellbrook-8-rev-b' });
    const ids = revB.nextChecks.map((c) => c.id);
    expect(ids[0]).toBe('supply-apart');
    expect(ids).not.toContain('video-ram-data');
    expect(ids).not.toContain('clock-at-processor');
    const measured = await caller.lookup.ask({ text: 'grey screen, supply apart 5.0 V', device: 'quellbrook-8-rev-a' });
    expect(measured.nextChecks.map((c) => c.id)).toEqual(expect.arrayContaining(['clock-at-processor', 'video-ram-data']));
    expect(measured.nextChecks.map((c) => c.id)).not.toContain('supply-apart');
    for (const check of measured.nextChecks) {
      expect(check.outcomes.reduce((sum, o) => sum + o.probability, 0)).toBeCloseTo(1, 9);
      expect(check.bitsPerMinute).toBeCloseTo(check.bits / check.minutes, 12);
    }
  });

  it('says so where nothing was asked, nothing was read, nothing matches, or the device has no cases', async () => {
    const oneDevice = smallCases(90).filter((c) => c.content.device === 'ormadic-duo-rev-1');
    const caller = memoryCaller(oneDevice);
    const warnings = async (text: string, device: string | null = null) => (await caller.lookup.ask({ text, device })).warnings;
    expect(await warnings('')).toContain('no-findings');
    expect(await warnings('zorble')).toContain('nothing-read');
    expect(await warnings('dead unit')).toContain('no-match');
    expect(await warnings('grey screen', 'quellbrook-8')).toContain('device-without-cases');
    expect(await warnings('grey screen', 'ormadic-duo')).not.toContain('device-without-cases');
  });

  it('finds the very case that was described, first among the similar ones', async () => {
    const caller = memoryCaller(smallCases(200));
    const result = await caller.lookup.ask({ text: 'grey screen, clock missing, garbled picture', device: 'ormadic-duo-rev-1' });
    expect(result.similar).toHaveLength(10);
    expect(result.similar[0]?.contradicting).toEqual([]);
    expect(result.similar[0]?.shared.map((s) => s.finding.id)).toEqual(
      expect.arrayContaining(['grey-screen', 'clock-at-processor']),
    );
    const scores = result.similar.map((s) => s.score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
  });

  it('refuses a device that is not in the catalogue', async () => {
    const caller = memoryCaller([]);
    const asked = caller.lookup.ask({ text: 'grey screen', device: 'no-such-machine' });
    await expect(asked).rejects.toMatchObject({ code: 'NOT_FOUND', cause: { code: 'device-not-found' } });
  });
});
