import type { DeviceView } from '../../schemas/device-view';
import { boardLabel } from '../casebook/board-label';
import type { CasebookModel } from '../casebook/casebook-model';
import { countRows, rowsInScope } from '../casebook/case-scope';
import { monthCounts } from '../casebook/case-months';
import { causeShares, symptomShares } from '../casebook/count-shares';
import { symptomsByCauses } from '../casebook/cross-table';
import { revisionChanges } from './revision-changes';
import { weakSpots } from './weak-spots';

const SYMPTOMS_SHOWN = 15;
const TOGETHER = { rows: 10, columns: 8 };

/**
 * What the casebook knows of a model; null where the catalogue lacks it. `workingUnits`: how many there are by board; what
 * they read comes apart, see `boardReadings`.
 */
export function deviceView(model: CasebookModel, slug: string, workingUnits: ReadonlyMap<string, number>): DeviceView | null {
  const device = model.coding.catalogue.models.find((entry) => entry.slug === slug);
  if (!device) return null;
  const rows = rowsInScope(model, { device: slug });
  const { causes, causeNotFound, of } = causeShares(model, rows);
  return {
    id: slug,
    label: device.name,
    summary: device.summary,
    maker: { id: device.maker.slug, label: device.maker.name },
    category: device.category,
    cases: of,
    boards: device.boards.map((board) => ({
      ...board,
      label: boardLabel(device, board),
      cases: countRows(rowsInScope(model, { device: board.slug })),
      workingUnits: workingUnits.get(board.slug) ?? 0,
    })),
    causes,
    causeNotFound,
    symptoms: symptomShares(model, rows).slice(0, SYMPTOMS_SHOWN),
    ...weakSpots(model, device),
    revisions: revisionChanges(model, device),
    together: symptomsByCauses(model, rows, TOGETHER),
    months: monthCounts(model, rows),
  };
}
