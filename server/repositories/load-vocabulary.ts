import { setImmediate as breath } from 'node:timers/promises';
import { type NumberRule, type Vocabulary, vocabularySchema } from '../../shared/schemas/vocabulary';
import { applyEdits } from '../../shared/domain/words/apply-edits';
import type { Db } from '../db';
import { readSynonyms, readTags } from './entry-lists';
import { listWordEditsInForce } from './word-edit-repository';

/**
 * The whole vocabulary: what ships, in the order in which it was saved, with what moderators have changed on top. Throws where
 * stored rows do not fit the schema.
 */
export async function loadVocabulary(db: Db): Promise<Vocabulary> {
  const synonyms = await readSynonyms(db, ['role', 'symptom', 'symptom-absent', 'check', 'outcome', 'cause', 'fix']);
  const tags = await readTags(db);
  const vocabulary = {
    roles: (await readRoles(db)).map((r) => ({ ...r, synonyms: synonyms('role', r.slug) })),
    symptoms: (await readSymptoms(db)).map((s) => ({
      ...s,
      synonyms: synonyms('symptom', s.slug),
      absentPhrases: synonyms('symptom-absent', s.slug),
      categories: tags('symptom', s.slug, 'category'),
    })),
    checks: (await readChecks(db)).map((c) => ({
      ...c,
      synonyms: synonyms('check', c.slug),
      outcomes: c.outcomes.map((o) => ({ ...o, synonyms: synonyms('outcome', `${c.slug}/${o.slug}`) })),
      categories: tags('check', c.slug, 'category'),
      instruments: tags('check', c.slug, 'instrument'),
      needs: tags('check', c.slug, 'need'),
      cautions: tags('check', c.slug, 'caution'),
    })),
    causes: (await readCauses(db)).map((c) => ({
      ...c,
      synonyms: synonyms('cause', c.slug),
      categories: tags('cause', c.slug, 'category'),
    })),
    fixes: (await readFixes(db)).map((f) => ({
      ...f,
      synonyms: synonyms('fix', f.slug),
      categories: tags('fix', f.slug, 'category'),
      instruments: tags('fix', f.slug, 'instrument'),
      needs: tags('fix', f.slug, 'need'),
      cautions: tags('fix', f.slug, 'caution'),
    })),
  };
  const edits = await listWordEditsInForce(db);
  // Reading waited for nothing, and judging what was read takes as long again.
  await breath();
  return vocabularySchema.parse(applyEdits(vocabulary as Vocabulary, edits));
}

const inOrder = { position: 'asc' } as const;

function readRoles(db: Db) {
  return db.role.findMany({ orderBy: inOrder, select: { slug: true, label: true, meaning: true, outside: true } });
}

async function readSymptoms(db: Db) {
  const rows = await db.symptom.findMany({
    orderBy: inOrder,
    select: {
      slug: true,
      label: true,
      meaning: true,
      area: true,
      hiddenBy: { orderBy: inOrder, select: { hiderSlug: true } },
    },
  });
  return rows.map((row) => ({ ...row, hiddenBy: row.hiddenBy.map((h) => h.hiderSlug) }));
}

async function readChecks(db: Db) {
  const rows = await db.check.findMany({
    orderBy: inOrder,
    select: {
      slug: true,
      label: true,
      meaning: true,
      area: true,
      howTo: true,
      targetRoleSlug: true,
      stage: true,
      minutes: true,
      workingOutcome: true,
      risk: true,
      outcomes: { orderBy: inOrder, select: { slug: true, label: true } },
      prerequisites: { orderBy: inOrder, select: { earlierSlug: true } },
      clears: { orderBy: inOrder, select: { roleSlug: true } },
      rule: {
        select: {
          unit: true,
          overload: true,
          source: true,
          bands: { orderBy: inOrder, select: { outcomeSlug: true, min: true, max: true } },
        },
      },
    },
  });
  return rows.map(({ targetRoleSlug, prerequisites, clears, rule, ...row }) => ({
    ...row,
    targetRole: targetRoleSlug,
    prerequisites: prerequisites.map((p) => p.earlierSlug),
    ...(clears.length > 0 && { clears: clears.map((c) => c.roleSlug) }),
    rule: rule && ruleOf(rule),
  }));
}

function ruleOf(rule: {
  unit: string;
  overload: string | null;
  source: string;
  bands: { outcomeSlug: string; min: number | null; max: number | null }[];
}) {
  return {
    unit: rule.unit as NumberRule['unit'],
    overload: rule.overload,
    source: rule.source,
    bands: rule.bands.map((b) => ({ outcome: b.outcomeSlug, min: b.min, max: b.max })),
  };
}

async function readCauses(db: Db) {
  const rows = await db.cause.findMany({
    orderBy: inOrder,
    select: { slug: true, label: true, meaning: true, roleSlug: true, mode: true, usualProof: true },
  });
  return rows.map(({ roleSlug, ...row }) => ({ ...row, role: roleSlug }));
}

async function readFixes(db: Db) {
  const rows = await db.fix.findMany({
    orderBy: inOrder,
    select: {
      slug: true,
      label: true,
      meaning: true,
      action: true,
      roleSlug: true,
      howTo: true,
      first: true,
      minutes: true,
      partCostLowCents: true,
      partCostHighCents: true,
      stage: true,
      risk: true,
      addresses: { orderBy: inOrder, select: { causeSlug: true } },
    },
  });
  return rows.map(({ roleSlug, partCostLowCents, partCostHighCents, addresses, ...row }) => ({
    ...row,
    role: roleSlug,
    partCostCents: { low: partCostLowCents, high: partCostHighCents },
    addresses: addresses.map((a) => a.causeSlug),
  }));
}
