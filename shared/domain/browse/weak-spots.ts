import type { WeakSpot } from '../../schemas/device-view';
import type { DeviceModel } from '../../schemas/device';
import type { CasebookModel } from '../casebook/casebook-model';
import { type CaseRows, countRows, rowsInScope } from '../casebook/case-scope';
import { countedShare, namedRole, roleCounts } from '../casebook/count-shares';

/** Fewer cases than this are an anecdote, whatever the interval says. */
const LEAST_CASES = 3;

/**
 * Parts at fault more often on this device than on the others of its category: the 90 % intervals of the two shares do not
 * overlap, and at least three cases stand behind it. Shares whose 90 % intervals just miss each other differ at about the 2 %
 * level, two-sided (H. Goldstein & M. J. R. Healy, JRSS A 158, 1995, 175-177); over some thirty parts, about one device in
 * three shows a weak spot by chance.
 */
export function weakSpots(model: CasebookModel, device: DeviceModel): { weakSpots: WeakSpot[]; categoryCases: number } {
  const own = rowsInScope(model, { device: device.slug });
  const others = casesOfOthers(model, device);
  const [ownCases, otherCases] = [countRows(own), countRows(others)];
  if (otherCases === 0) return { weakSpots: [], categoryCases: 0 };
  const elsewhere = roleCounts(model, others);
  const found = [...roleCounts(model, own)].flatMap(([role, count]) => {
    const spot = {
      ...namedRole(model, role),
      here: countedShare(count, ownCases),
      elsewhere: countedShare(elsewhere.get(role) ?? 0, otherCases),
    };
    return count >= LEAST_CASES && spot.here.low > spot.elsewhere.high ? [spot] : [];
  });
  const lead = (spot: WeakSpot) => spot.here.low - spot.elsewhere.high;
  return { weakSpots: found.sort((a, b) => lead(b) - lead(a)), categoryCases: otherCases };
}

function casesOfOthers(model: CasebookModel, device: DeviceModel): CaseRows {
  const rows = new Uint32Array(rowsInScope(model, {}).length);
  for (const other of model.coding.catalogue.models) {
    if (other.slug === device.slug || other.category !== device.category) continue;
    rowsInScope(model, { device: other.slug }).forEach((word, at) => {
      rows[at] = (rows[at] as number) | word;
    });
  }
  return rows;
}
