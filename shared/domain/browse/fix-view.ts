import type { FixRecord } from '../../schemas/counted-share';
import type { FixLine, FixView } from '../../schemas/fix-view';
import type { CasebookModel } from '../casebook/casebook-model';
import { rowsInScope, bothRows, type CaseRows } from '../casebook/case-scope';
import { monthCounts } from '../casebook/case-months';
import { causeShares, namedRole, symptomShares } from '../casebook/count-shares';
import { recordOfFix } from '../casebook/fix-breakdown';
import { fixRecord } from '../casebook/fix-record';

const SHOWN = 12;

/** Every fix of the vocabulary: those tried, best first by the lower end of the interval, then those never tried. */
export function fixLines(model: CasebookModel): FixLine[] {
  const tried = fixRecord(model, {});
  const place = new Map(tried.map((record, at) => [record.id, at]));
  const nothing = { tried: 0, resolved: 0, partly: 0, noChange: 0, madeWorse: 0, cameBack: 0, low: 0, high: 1, estimate: 0.5 };
  return model.coding.vocabulary.fixes
    .map(({ slug, label, role, minutes, stage }) => ({
      ...(tried[place.get(slug) ?? -1] ?? { id: slug, label, ...nothing }),
      role: namedRole(model, role),
      minutes,
      stage,
    }))
    .sort((a, b) => (place.get(a.id) ?? tried.length) - (place.get(b.id) ?? tried.length));
}

/** What the casebook knows of a fix; null where the vocabulary lacks it. */
export function fixView(model: CasebookModel, slug: string): FixView | null {
  const fix = model.words.fixes.get(slug);
  if (!fix) return null;
  const { label, meaning, synonyms, howTo, first, minutes, partCostCents, stage, risk, cautions, instruments, needs } = fix;
  const rows = rowsInScope(model, { fix: slug });
  const name = { id: slug, label };
  return {
    ...name,
    meaning,
    synonyms,
    role: namedRole(model, fix.role),
    howTo,
    first,
    minutes,
    partCostCents,
    stage,
    risk,
    cautions,
    instruments,
    needs,
    addresses: fix.addresses.flatMap((id) => {
      const cause = model.words.causes.get(id);
      return cause ? [{ id, label: cause.label, role: namedRole(model, cause.role) }] : [];
    }),
    record: recordOfFix(model, slug, rows, name),
    ...breakdowns(model, slug, rows),
    months: monthCounts(model, rows),
  };
}

function breakdowns(model: CasebookModel, slug: string, rows: CaseRows): Pick<FixView, 'byDevice' | 'byCause' | 'bySymptom'> {
  const over = (names: readonly { id: string; label: string }[], key: 'device' | 'cause' | 'symptom'): FixRecord[] =>
    names
      .map(({ id, label }) => recordOfFix(model, slug, bothRows(rows, rowsInScope(model, { [key]: id })), { id, label }))
      .filter(({ tried }) => tried > 0)
      .sort((a, b) => b.tried - a.tried)
      .slice(0, SHOWN);
  const devices = model.coding.catalogue.models.map((device) => ({ id: device.slug, label: device.name }));
  return {
    byDevice: over(devices, 'device'),
    byCause: over(causeShares(model, rows).causes, 'cause'),
    bySymptom: over(symptomShares(model, rows).slice(0, SHOWN), 'symptom'),
  };
}
