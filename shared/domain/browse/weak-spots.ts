import type { WeakSpot } from '../../schemas/device-view';
import type { DeviceModel } from '../../schemas/device';
import type { CasebookModel } from '../casebook/casebook-model';
import { type CaseRows, countRows, rowsInScope } from '../casebook/case-scope';
import { countedShare, namedRole, roleCounts } from '../casebook/count-shares';

/** Fewer cases than this are an anecdote, whatever the interval says. */
const LEAST_CASES = 3;

/**
 * Parts at fault more often on this device than on the others of its category that can have such a fault: the 90 % intervals of the two shares do not
 * overlap, and at least three cases stand behind it. Shares whose 90 % intervals just miss each other differ at about the 2 %
 * level, two-sided (H. Goldstein & M. J. R. Healy, JRSS A 158, 1995, 175-177); over some thirty parts, about one device in
 * three shows a weak spot by chance.
 */
export function weakSpots(model: CasebookModel, device: DeviceModel): { weakSpots: WeakSpot[]; categoryCases: number } {
  const own = rowsInScope(model, { device: device.slug });
  const others = model.coding.catalogue.models.filter((m) => m.slug !== device.slug && m.category === device.category);
  const found = [...roleCounts(model, own)].flatMap(([role, count]) => {
    const rows = casesOf(model, others.filter((other) => canFail(model, other.slug, role)));
    const spot = {
      ...namedRole(model, role),
      here: countedShare(count, countRows(own)),
      elsewhere: countedShare(roleCounts(model, rows).get(role) ?? 0, countRows(rows)),
    };
    return count >= LEAST_CASES && spot.here.low > spot.elsewhere.high ? [spot] : [];
  });
  const lead = (spot: WeakSpot) => spot.here.low - spot.elsewhere.high;
  return { weakSpots: found.sort((a, b) => lead(b) - lead(a)), categoryCases: countRows(casesOf(model, others)) };
}

/** Whether a part of this role can be at fault there at all: a device without such a part says nothing about it. */
function canFail(model: CasebookModel, device: string, role: string): boolean {
  const { layout, vocabulary } = model.coding;
  const node = model.coding.deviceOf(device) ?? 0;
  return vocabulary.causes.some((cause, at) => cause.role === role && layout.impossible?.[node * layout.causeCount + at] !== 1);
}

function casesOf(model: CasebookModel, devices: readonly DeviceModel[]): CaseRows {
  const rows = new Uint32Array(rowsInScope(model, {}).length);
  for (const other of devices) {
    rowsInScope(model, { device: other.slug }).forEach((word, at) => {
      rows[at] = (rows[at] as number) | word;
    });
  }
  return rows;
}
