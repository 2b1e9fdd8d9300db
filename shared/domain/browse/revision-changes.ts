import type { Board, BoardPart, DeviceModel } from '../../schemas/device';
import type { RevisionChange } from '../../schemas/device-view';
import { boardLabel } from '../casebook/board-label';
import type { CasebookModel } from '../casebook/casebook-model';
import { countRows, rowsInScope } from '../casebook/case-scope';
import { countedShare, namedRole, roleCounts } from '../casebook/count-shares';

/** What changed from each board revision of a model to the next, in the order of the catalogue. */
export function revisionChanges(model: CasebookModel, device: DeviceModel): RevisionChange[] {
  return device.boards.slice(1).map((to, at) => {
    const from = device.boards[at] as Board;
    return {
      from: { id: from.slug, label: boardLabel(device, from) },
      to: { id: to.slug, label: boardLabel(device, to) },
      parts: partChanges(model, from, to),
      faults: faultChanges(model, from, to),
    };
  });
}

/** By designator: parts that came, went, or became another. */
function partChanges(model: CasebookModel, from: Board, to: Board): RevisionChange['parts'] {
  const before = new Map(from.parts.map((part) => [part.designator, part]));
  const after = new Map(to.parts.map((part) => [part.designator, part]));
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((designator): RevisionChange['parts'] => {
    const [old, now] = [before.get(designator), after.get(designator)];
    const role = namedRole(model, (now ?? old)?.role ?? '');
    const told = { designator, role, before: partWords(model, old, now), after: partWords(model, now, old) };
    if (!old) return [{ ...told, kind: 'added' }];
    if (!now) return [{ ...told, kind: 'removed' }];
    return isSamePart(old, now) ? [] : [{ ...told, kind: 'changed' }];
  });
}

function isSamePart(a: BoardPart, b: BoardPart): boolean {
  return a.role === b.role && a.partNumber === b.partNumber && a.package === b.package && a.pins === b.pins;
}

/** Number and package; with the role where that is another than on the other board. */
function partWords(model: CasebookModel, part: BoardPart | undefined, other: BoardPart | undefined): string | null {
  if (!part) return null;
  const role = other && other.role !== part.role ? `${namedRole(model, part.role).label}, ` : '';
  return `${role}${part.partNumber ?? 'no number'}, ${part.package} ${part.pins}`;
}

/** Parts at fault in clearly another share of the cases: the 90 % intervals do not overlap. */
function faultChanges(model: CasebookModel, from: Board, to: Board): RevisionChange['faults'] {
  const sides = [from, to].map(({ slug }) => {
    const rows = rowsInScope(model, { device: slug });
    return { of: countRows(rows), counts: roleCounts(model, rows) };
  });
  const [old, now] = sides as [(typeof sides)[number], (typeof sides)[number]];
  return [...new Set([...old.counts.keys(), ...now.counts.keys()])].flatMap((role) => {
    const before = countedShare(old.counts.get(role) ?? 0, old.of);
    const after = countedShare(now.counts.get(role) ?? 0, now.of);
    const isApart = before.high < after.low || after.high < before.low;
    return isApart ? [{ ...namedRole(model, role), before, after }] : [];
  });
}
