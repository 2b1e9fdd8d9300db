import type { PartLine, PartPlaces, PartView } from '../../schemas/part-view';
import type { Board, BoardPart } from '../../schemas/device';
import { boardLabel } from '../casebook/board-label';
import type { CasebookModel } from '../casebook/casebook-model';
import { bothRows, countRows, rowsInScope, rowsSuspecting } from '../casebook/case-scope';
import { monthCounts } from '../casebook/case-months';
import { causeShares, countedShare, deviceShares, roleCounts, symptomShares } from '../casebook/count-shares';
import { recordOfFix } from '../casebook/fix-breakdown';

const SYMPTOMS_SHOWN = 12;

/** Every part that can be at fault, in the order of the vocabulary. */
export function partLines(model: CasebookModel): PartLine[] {
  const { vocabulary, catalogue } = model.coding;
  const counts = roleCounts(model, rowsInScope(model, {}));
  const boards = catalogue.models.flatMap((m) => m.boards);
  const withCause = new Set(vocabulary.causes.map((cause) => cause.role));
  return vocabulary.roles
    .filter(({ slug }) => withCause.has(slug) || boards.some((board) => board.parts.some((part) => part.role === slug)))
    .map(({ slug, label, meaning, outside }) => ({
      id: slug,
      label,
      meaning,
      outside,
      cases: counts.get(slug) ?? 0,
      boards: boards.filter((board) => board.parts.some((part) => part.role === slug)).length,
    }));
}

/** What the casebook knows of a part by its role; null where the vocabulary lacks the role. */
export function partView(model: CasebookModel, slug: string): PartView | null {
  const role = model.words.roles.get(slug);
  if (!role) return null;
  const all = rowsInScope(model, {});
  const rows = rowsInScope(model, { part: slug });
  const suspected = rowsSuspecting(model, slug);
  const at = countRows(rows);
  return {
    id: slug,
    label: role.label,
    meaning: role.meaning,
    synonyms: role.synonyms,
    outside: role.outside,
    places: partPlaces(model, slug),
    share: countedShare(at, countRows(all)),
    suspected: countedShare(countRows(bothRows(rows, suspected)), countRows(suspected)),
    failures: causeShares(model, rows).causes.filter((cause) => cause.role.id === slug),
    symptoms: symptomShares(model, rows).slice(0, SYMPTOMS_SHOWN),
    devices: deviceShares(model, rows).filter(({ count }) => count > 0),
    fixes: model.coding.vocabulary.fixes
      .filter((fix) => fix.role === slug)
      .map((fix) => recordOfFix(model, fix.slug, all, { id: fix.slug, label: fix.label }))
      .sort((a, b) => b.tried - a.tried),
    checks: checksOf(model, slug),
    months: monthCounts(model, rows),
  };
}

function checksOf(model: CasebookModel, role: string): PartView['checks'] {
  return model.coding.vocabulary.checks
    .filter((check) => check.targetRole === role)
    .sort((a, b) => a.stage - b.stage || a.minutes - b.minutes)
    .map(({ slug, label, meaning, howTo, stage, minutes, cautions, outcomes, workingOutcome }) => {
      const working = outcomes.find((outcome) => outcome.slug === workingOutcome)?.label ?? workingOutcome;
      return { id: slug, label, meaning, howTo, stage, minutes, cautions, working };
    });
}

/** Boards by the very part that they carry, those that most boards share first. */
export function partPlaces(model: CasebookModel, role: string): PartPlaces[] {
  const places = new Map<string, PartPlaces>();
  for (const device of model.coding.catalogue.models) {
    for (const board of device.boards) {
      for (const [kind, parts] of kindsOn(board, role)) {
        const [first] = parts as [BoardPart, ...BoardPart[]];
        const place = places.get(kind) ?? { partNumber: first.partNumber, package: first.package, pins: first.pins, boards: [] };
        places.set(kind, place);
        place.boards.push({ id: board.slug, label: boardLabel(device, board), designators: parts.map((p) => p.designator) });
      }
    }
  }
  return [...places.values()].sort((a, b) => b.boards.length - a.boards.length);
}

/** Parts of a role on one board, by number and package; what has no number is only sure to fit its own board. */
function kindsOn(board: Board, role: string): Map<string, BoardPart[]> {
  const kinds = new Map<string, BoardPart[]>();
  for (const part of board.parts.filter((p) => p.role === role)) {
    const kind = `${part.partNumber ?? board.slug} ${part.package} ${part.pins}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), part]);
  }
  return kinds;
}
