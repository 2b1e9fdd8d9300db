import { type Question, questionSchema } from '../../schemas/question';
import type { SymptomLine, SymptomView } from '../../schemas/symptom-view';
import type { CasebookModel } from '../casebook/casebook-model';
import { bothRows, countRows, rowsInScope } from '../casebook/case-scope';
import { monthCounts } from '../casebook/case-months';
import { causeShares, countedShare, deviceShares, namedRole } from '../casebook/count-shares';
import { fixRecord } from '../casebook/fix-record';
import { nextCheckRows } from '../look-up/next-check-rows';
import { readQuestion } from '../look-up/read-question';

const FIRST_CHECKS = 5;

/** Every symptom of the vocabulary, in its order, with its cases and the commonest cause among them. */
export function symptomLines(model: CasebookModel): SymptomLine[] {
  return model.coding.vocabulary.symptoms.map(({ slug, label, meaning, area }) => {
    const { causes, of } = causeShares(model, rowsInScope(model, { symptom: slug }));
    const [first] = causes;
    const leading = first ? { id: first.id, label: first.label, count: first.count, of, low: first.low, high: first.high } : null;
    return { id: slug, label, meaning, area, cases: of, leading };
  });
}

/** What the casebook knows of a symptom, on one device or on all; null where the vocabulary lacks the symptom. */
export function symptomView(model: CasebookModel, slug: string, device: string | null): SymptomView | null {
  const symptom = model.words.symptoms.get(slug);
  if (!symptom) return null;
  const place = device === null ? undefined : model.words.devices.get(device);
  const everywhere = rowsInScope(model, { symptom: slug });
  const on = rowsInScope(model, { device });
  const rows = bothRows(everywhere, on);
  const { causes, causeNotFound } = causeShares(model, rows);
  return {
    id: slug,
    label: symptom.label,
    meaning: symptom.meaning,
    synonyms: symptom.synonyms,
    area: symptom.area,
    categories: symptom.categories,
    hiddenBy: symptom.hiddenBy.map((id) => ({ id, label: model.words.symptoms.get(id)?.label ?? id })),
    device: place ? { id: place.slug, label: place.label } : null,
    share: countedShare(countRows(rows), countRows(on)),
    devices: deviceShares(model, everywhere).filter(({ id, count }) => count > 0 || canOccur(model, symptom.categories, id)),
    causes,
    causeNotFound,
    fixes: fixRecord(model, { symptoms: [slug], device }),
    firstChecks: firstChecks(model, slug, device),
    months: monthCounts(model, rows),
  };
}

/** Whether a device is of a category where the symptom can occur: for the others, no case says nothing. */
function canOccur(model: CasebookModel, categories: SymptomView['categories'], device: string): boolean {
  const category = model.words.devices.get(device)?.model.category;
  return category !== undefined && categories.includes(category);
}

/** A look-up with this symptom alone: what a symptom's page asks. */
export function symptomQuestion(symptom: string, device: string | null): Question {
  return questionSchema.parse({ set: [{ kind: 'symptom', id: symptom, value: 'present' }], device });
}

/** What a look-up with this symptom alone would have checked first. */
function firstChecks(model: CasebookModel, symptom: string, device: string | null): SymptomView['firstChecks'] {
  const coded = readQuestion(model, symptomQuestion(symptom, device));
  const probability = model.estimator.probabilities(coded.device, coded.findings);
  return nextCheckRows(model, coded, probability)
    .nextChecks.slice(0, FIRST_CHECKS)
    .map(({ id, label, stage, minutes, bits, cautions }) => {
      const role = namedRole(model, model.words.checks.get(id)?.targetRole ?? '');
      return { id, label, role, stage, minutes, bits, cautions };
    });
}
