import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../shared/schemas/case';
import { posting } from '../submission/posting';
import { smallCatalogue } from '../fixtures/small-catalogue';

const board = smallCatalogue.models[0]!.boards[0]!;
const part = board.parts.find((p) => p.pins >= 2)!;
const readings: Reading[] = ['1', '2'].map((pin) => ({
  designator: part.designator,
  pin,
  state: 'high',
  value: null,
  unit: null,
}));
const unit = { device: board.slug, readings };

describe('readings of a working unit', () => {
  it('count only once a moderator has accepted them', async () => {
    const { as, visitor } = await posting();
    const [mira, mod] = [await as('mira'), await as('mod', 'moderator')];
    const sent = await mira.workingUnit.submit(unit);
    if (sent.kind === 'problems') throw new Error(sent.problems.join());
    const known = async () => (await visitor.bench.snapshot({ device: board.slug, have: null })).snapshot?.working ?? [];
    expect(await known()).toEqual([]);
    const [waiting] = await mod.workingUnit.waiting();
    expect(waiting).toMatchObject({ id: sent.id, device: board.slug, mayDecide: true });
    expect(JSON.stringify(waiting)).not.toContain('mira');
    await mod.workingUnit.decide({ id: sent.id, accept: true });
    expect(await known()).toMatchObject([{ designator: part.designator, units: 1 }]);
    expect(await mira.workingUnit.listMine()).toMatchObject([{ id: sent.id, status: 'accepted' }]);
    await expect(mod.workingUnit.decide({ id: sent.id, accept: false })).rejects.toThrow(/It is accepted/);
  });

  it('sent twice are one submission, and can be taken back and sent again', async () => {
    const { as } = await posting();
    const mira = await as('mira');
    const [first, second] = [await mira.workingUnit.submit(unit), await mira.workingUnit.submit(unit)];
    expect(second).toEqual({ kind: 'already', id: first.kind !== 'problems' && first.id });
    const id = first.kind === 'problems' ? '' : first.id;
    await mira.workingUnit.withdraw({ id });
    expect(await mira.workingUnit.submit(unit)).toMatchObject({ kind: 'already', id });
    expect(await mira.workingUnit.listMine()).toMatchObject([{ id, status: 'submitted' }]);
  });

  it('are refused where board, part or pin do not exist, or a pin stands twice', async () => {
    const { as } = await posting();
    const mira = await as('mira');
    const wrong = async (over: Partial<typeof unit>) => {
      const outcome = await mira.workingUnit.submit({ ...unit, ...over });
      return outcome.kind === 'problems' ? outcome.problems.join(' ') : outcome.kind;
    };
    expect(await wrong({ device: smallCatalogue.models[0]!.slug })).toMatch(/board revision/);
    expect(await wrong({ readings: [{ ...readings[0]!, designator: 'U999' }] })).toMatch(/no U999/);
    expect(await wrong({ readings: [{ ...readings[0]!, pin: '209' }] })).toMatch(/no pin 209/);
    expect(await wrong({ readings: [readings[0]!, readings[0]!] })).toMatch(/twice/);
  });

  it('are decided by a moderator who did not send them', async () => {
    const { as } = await posting();
    const [mod, olek] = [await as('mod', 'moderator'), await as('olek')];
    const sent = await mod.workingUnit.submit(unit);
    const id = sent.kind === 'problems' ? '' : sent.id;
    await expect(mod.workingUnit.decide({ id, accept: true })).rejects.toThrow(/may not/);
    await expect(olek.workingUnit.waiting()).rejects.toThrow(/may not/);
    await expect(olek.workingUnit.withdraw({ id })).rejects.toThrow(/no case|posted no/);
  });

  it('are decided in the log: what was decided, and neither who nor on what', async () => {
    const { db, as } = await posting();
    const [mira, mod] = [await as('mira'), await as('mod', 'moderator')];
    const first = await mira.workingUnit.submit(unit);
    const second = await mira.workingUnit.submit({ ...unit, readings: readings.slice(0, 1) });
    if (first.kind === 'problems' || second.kind === 'problems') throw new Error('not sent');
    await mod.workingUnit.decide({ id: first.id, accept: true });
    await mod.workingUnit.decide({ id: second.id, accept: false });
    await expect(mod.workingUnit.decide({ id: second.id, accept: true })).rejects.toThrow(/It is declined/);
    const entries = await db.logEntry.findMany({ where: { subjectKind: 'working-unit' }, orderBy: { seq: 'asc' } });
    expect(entries.map(({ kind, detail }) => [kind, detail])).toEqual([
      ['unit-accepted', '{"readings":2}'],
      ['unit-declined', '{"readings":1}'],
    ]);
    for (const secret of [first.id, second.id, 'mira', 'mod']) expect(JSON.stringify(entries)).not.toContain(secret);
  });
});
