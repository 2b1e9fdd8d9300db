import type { WordEdit, WordKind } from '../../shared/schemas/word-edit';
import type { Db } from '../db';

/** Behind every entry that ships. */
const POSITION = 1_000_000;

/**
 * Gives an added entry the row that cases refer to. Its lists are left out: the entry itself stands in the change that adds
 * it, and the next start replaces the lists of what ships.
 */
export async function insertWordAnchor(db: Db, edit: Extract<WordEdit, { act: 'add' }>): Promise<void> {
  const { slug, label, meaning } = edit.entry;
  const named = { slug, label, meaning, position: POSITION };
  if (edit.kind === 'symptom') await db.symptom.create({ data: { ...named, area: edit.entry.area } });
  else if (edit.kind === 'cause') {
    const { role, mode, usualProof } = edit.entry;
    await db.cause.create({ data: { ...named, roleSlug: role, mode, usualProof } });
  } else if (edit.kind === 'fix') {
    const { action, role, howTo, first, minutes, stage, risk, partCostCents } = edit.entry;
    const cost = { partCostLowCents: partCostCents.low, partCostHighCents: partCostCents.high };
    await db.fix.create({ data: { ...named, action, roleSlug: role, howTo, first, minutes, stage, risk, ...cost } });
  } else {
    const { area, howTo, targetRole, stage, minutes, workingOutcome, risk, outcomes } = edit.entry;
    await db.check.create({
      data: { ...named, area, howTo, targetRoleSlug: targetRole, stage, minutes, workingOutcome, risk },
    });
    await db.checkOutcome.createMany({
      data: outcomes.map((outcome, position) => ({ checkSlug: slug, slug: outcome.slug, position, label: outcome.label })),
    });
  }
}

/** Whether a row of this kind has the slug, shipped or added. */
export async function hasWordRow(db: Db, kind: WordKind, slug: string): Promise<boolean> {
  const where = { slug };
  const count = {
    symptom: () => db.symptom.count({ where }),
    check: () => db.check.count({ where }),
    cause: () => db.cause.count({ where }),
    fix: () => db.fix.count({ where }),
  }[kind];
  return (await count()) > 0;
}

/** Ids of the cases that name an entry, of any status, in order. */
export async function listCasesNaming(db: Db, kind: WordKind, slug: string): Promise<string[]> {
  const find = {
    symptom: async () => db.caseSymptom.findMany({ where: { symptomSlug: slug }, select: { caseId: true } }),
    cause: async () => db.caseCause.findMany({ where: { causeSlug: slug }, select: { caseId: true } }),
    fix: async () => db.caseStepFix.findMany({ where: { fixSlug: slug }, select: { caseId: true } }),
    check: async () => [
      ...(await db.caseStep.findMany({ where: { checkSlug: slug }, select: { caseId: true } })),
      ...(await db.caseAfterCheck.findMany({ where: { checkSlug: slug }, select: { caseId: true } })),
    ],
  }[kind];
  return [...new Set((await find()).map(({ caseId }) => caseId))].sort();
}
