import { describe, expect, it } from 'vitest';
import { mergeRecords } from '../../../shared/domain/bench/merge-log';
import type { BenchEntry, BenchUnit } from '../../../shared/schemas/bench';
import { posting } from '../submission/posting';

const id = (text: string) => text.padEnd(16, 'a').slice(0, 16);
const [phone, tablet] = [id('phone'), id('tablet')];
const unit: BenchUnit = {
  id: id('unit'),
  at: 1_700_000_000_000,
  device: 'quellbrook-8-rev-a',
  label: 'blue',
  complete: false,
  working: false,
  closedAt: null,
  clock: 1,
  by: phone,
  deleted: false,
};
const note = (name: string, text: string, over: Partial<BenchEntry> = {}): BenchEntry => ({
  id: id(name),
  unitId: unit.id,
  at: unit.at + 1,
  body: { kind: 'note', text },
  clock: 1,
  by: phone,
  deleted: false,
  ...over,
});

describe('bench.sync', () => {
  it('keeps what two browsers added while apart, and for one entry the later revision', async () => {
    const { as } = await posting();
    const mira = await as('mira');
    const first = await mira.bench.sync({ account: null, since: 0, units: [unit], entries: [note('one', 'from the phone')] });
    // Both go offline here; the tablet has seen the first entry, changes it and adds another.
    const onTablet = [note('one', 'changed on the tablet', { clock: 2, by: tablet }), note('two', 'tablet only', { by: tablet })];
    const onPhone = [note('three', 'phone only')];
    const tabletBack = await mira.bench.sync({ account: first.account, since: first.seq, units: [], entries: onTablet });
    const phoneBack = await mira.bench.sync({ account: first.account, since: first.seq, units: [], entries: onPhone });
    const tabletAgain = await mira.bench.sync({ account: first.account, since: tabletBack.seq, units: [], entries: [] });
    const tabletHas = mergeRecords(mergeRecords([...first.entries], onTablet), [...tabletBack.entries, ...tabletAgain.entries]);
    const phoneHas = mergeRecords(mergeRecords([...first.entries], onPhone), phoneBack.entries);
    expect(tabletHas).toEqual(phoneHas);
    expect(phoneHas.map((e) => e.body.kind === 'note' && e.body.text).sort()).toEqual([
      'changed on the tablet',
      'phone only',
      'tablet only',
    ]);
  });

  it('takes the same twice as once, and an older revision never comes back over a deletion', async () => {
    const { as } = await posting();
    const mira = await as('mira');
    const gone = note('one', 'x', { clock: 3, deleted: true });
    await mira.bench.sync({ account: null, since: 0, units: [unit], entries: [gone] });
    const again = await mira.bench.sync({ account: 'mira', since: 0, units: [unit], entries: [note('one', 'old'), gone] });
    expect(again.entries).toEqual([gone]);
    expect(again.units).toEqual([unit]);
    const nothing = await mira.bench.sync({ account: 'mira', since: again.seq, units: [unit], entries: [gone] });
    expect(nothing).toMatchObject({ units: [], entries: [], more: false });
  });

  it('sends a long log in pages and loses none of it', async () => {
    const { as } = await posting();
    const mira = await as('mira');
    const all = Array.from({ length: 620 }, (_, i) => note(`n${i.toString(36).replace(/[0189]/g, (d) => 'wxyz'['0189'.indexOf(d)] as string)}`, `${i}`, { at: unit.at + i }));
    const distinct = [...new Map(all.map((e) => [e.id, e])).values()];
    for (let at = 0; at < distinct.length; at += 300) {
      await mira.bench.sync({ account: 'mira', since: 1e6, units: at === 0 ? [unit] : [], entries: distinct.slice(at, at + 300) });
    }
    const got = new Set<string>();
    let since = 0;
    for (let page = 0, more = true; more && page < 5; page += 1) {
      const answer = await mira.bench.sync({ account: 'mira', since, units: [], entries: [] });
      for (const entry of answer.entries) got.add(entry.id);
      ({ seq: since, more } = answer);
    }
    expect(got.size).toBe(distinct.length);
    expect(got.size).toBeGreaterThan(500);
  });

  it('shows nobody the logs of another, not even under the same ids', async () => {
    const { as, visitor } = await posting();
    const [mira, olek] = [await as('mira'), await as('olek')];
    await mira.bench.sync({ account: null, since: 0, units: [unit], entries: [note('one', 'mine')] });
    const other = await olek.bench.sync({ account: null, since: 0, units: [], entries: [note('one', 'theirs')] });
    expect(other.units).toEqual([]);
    expect(other.entries.map((e) => e.body)).toEqual([{ kind: 'note', text: 'theirs' }]);
    await expect(olek.bench.sync({ account: 'mira', since: 0, units: [], entries: [] })).rejects.toThrow(/another account/);
    await expect(visitor.bench.sync({ account: null, since: 0, units: [], entries: [] })).rejects.toThrow(/Sign in/);
  });

  it('is part of what an account downloads, and goes with it', async () => {
    const { as, db } = await posting();
    const mira = await as('mira');
    await mira.bench.sync({ account: null, since: 0, units: [unit], entries: [note('one', 'mine')] });
    expect((await mira.account.download()).benchLogs).toMatchObject({ units: [{ label: 'blue' }], entries: [{ body: { text: 'mine' } }] });
    await db.user.delete({ where: { id: 'mira' } });
    expect(await db.benchEntry.count()).toBe(0);
  });
});

describe('bench.snapshot', () => {
  it('is sent once, and again only where something changed', async () => {
    const { visitor } = await posting();
    const first = await visitor.bench.snapshot({ device: 'quellbrook-8-rev-a', have: null });
    expect(first.snapshot?.casebook.device).toBe('quellbrook-8-rev-a');
    expect(await visitor.bench.snapshot({ device: 'quellbrook-8-rev-a', have: first.version })).toMatchObject({ snapshot: null });
    await expect(visitor.bench.snapshot({ device: 'no-such-thing', have: null })).rejects.toThrow(/No device/);
    const words = await visitor.bench.words({ have: null });
    expect(await visitor.bench.words({ have: words.version })).toMatchObject({ words: null });
  });
});
