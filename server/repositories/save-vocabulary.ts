import type { Check, Vocabulary } from '../../shared/schemas/vocabulary';
import type { Db } from '../db';
import { synonymRows, tagRows } from './entry-lists';

type Slugged = { slug: string };
type Table<Row> = {
  existing: readonly Slugged[];
  createMany: (rows: Row[]) => Promise<unknown>;
  update: (row: Row) => Promise<unknown>;
};

/** Adds rows whose slug is new and updates the others; removes none. */
async function addOrUpdate<Row extends Slugged>(rows: readonly Row[], table: Table<Row>): Promise<void> {
  const known = new Set(table.existing.map((row) => row.slug));
  const fresh = rows.filter((row) => !known.has(row.slug));
  if (fresh.length > 0) await table.createMany(fresh);
  for (const row of rows) if (known.has(row.slug)) await table.update(row);
}

/**
 * Stores the vocabulary. May run again: entries are added or updated by slug and never removed, since cases may
 * name them. Run it in a transaction to get all or nothing.
 */
export async function saveVocabulary(db: Db, vocabulary: Vocabulary): Promise<void> {
  await saveRoles(db, vocabulary);
  await saveSymptoms(db, vocabulary);
  await saveChecks(db, vocabulary);
  await saveCauses(db, vocabulary);
  await saveFixes(db, vocabulary);
  await saveLists(db, vocabulary);
}

const slugOnly = { select: { slug: true } } as const;

async function saveRoles(db: Db, { roles }: Vocabulary) {
  const rows = roles.map(({ slug, label, meaning, outside }, position) => ({ slug, position, label, meaning, outside }));
  await addOrUpdate(rows, {
    existing: await db.role.findMany(slugOnly),
    createMany: (data) => db.role.createMany({ data }),
    update: (data) => db.role.update({ where: { slug: data.slug }, data }),
  });
}

async function saveSymptoms(db: Db, { symptoms }: Vocabulary) {
  const rows = symptoms.map(({ slug, label, meaning, area }, position) => ({ slug, position, label, meaning, area }));
  await addOrUpdate(rows, {
    existing: await db.symptom.findMany(slugOnly),
    createMany: (data) => db.symptom.createMany({ data }),
    update: (data) => db.symptom.update({ where: { slug: data.slug }, data }),
  });
  await db.symptomHiding.deleteMany({ where: { hiddenSlug: { in: symptoms.map((s) => s.slug) } } });
  await db.symptomHiding.createMany({
    data: symptoms.flatMap((s) => s.hiddenBy.map((hiderSlug, position) => ({ hiddenSlug: s.slug, hiderSlug, position }))),
  });
}

async function saveChecks(db: Db, { checks }: Vocabulary) {
  const rows = checks.map((c, position) => ({
    slug: c.slug,
    position,
    label: c.label,
    meaning: c.meaning,
    area: c.area,
    howTo: c.howTo,
    targetRoleSlug: c.targetRole,
    stage: c.stage,
    minutes: c.minutes,
    workingOutcome: c.workingOutcome,
    risk: c.risk,
  }));
  await addOrUpdate(rows, {
    existing: await db.check.findMany(slugOnly),
    createMany: (data) => db.check.createMany({ data }),
    update: (data) => db.check.update({ where: { slug: data.slug }, data }),
  });
  const slugs = checks.map((c) => c.slug);
  await db.numberBand.deleteMany({ where: { checkSlug: { in: slugs } } });
  await saveOutcomes(db, checks);
  await db.checkPrerequisite.deleteMany({ where: { laterSlug: { in: slugs } } });
  await db.checkPrerequisite.createMany({
    data: checks.flatMap((c) => c.prerequisites.map((earlierSlug, position) => ({ laterSlug: c.slug, earlierSlug, position }))),
  });
  await db.checkClears.deleteMany({ where: { checkSlug: { in: slugs } } });
  await db.checkClears.createMany({
    data: checks.flatMap((c) => (c.clears ?? []).map((roleSlug, position) => ({ checkSlug: c.slug, roleSlug, position }))),
  });
  await saveRules(db, checks);
}

/** Outcomes are added or updated, not replaced: steps of cases refer to them. */
async function saveOutcomes(db: Db, checks: readonly Check[]) {
  const rows = checks.flatMap((c) =>
    c.outcomes.map((o, position) => ({ checkSlug: c.slug, slug: o.slug, position, label: o.label })),
  );
  const existing = await db.checkOutcome.findMany({ select: { checkSlug: true, slug: true } });
  const known = new Set(existing.map((o) => `${o.checkSlug}/${o.slug}`));
  await db.checkOutcome.createMany({ data: rows.filter((o) => !known.has(`${o.checkSlug}/${o.slug}`)) });
  for (const data of rows.filter((o) => known.has(`${o.checkSlug}/${o.slug}`))) {
    await db.checkOutcome.update({ where: { checkSlug_slug: { checkSlug: data.checkSlug, slug: data.slug } }, data });
  }
}

async function saveRules(db: Db, checks: readonly Check[]) {
  await db.numberRule.deleteMany({ where: { checkSlug: { in: checks.map((c) => c.slug) } } });
  const withRule = checks.flatMap((c) => (c.rule ? [{ checkSlug: c.slug, rule: c.rule }] : []));
  await db.numberRule.createMany({
    data: withRule.map(({ checkSlug, rule }) => ({ checkSlug, unit: rule.unit, overload: rule.overload, source: rule.source })),
  });
  await db.numberBand.createMany({
    data: withRule.flatMap(({ checkSlug, rule }) =>
      rule.bands.map((b, position) => ({ checkSlug, position, outcomeSlug: b.outcome, min: b.min, max: b.max })),
    ),
  });
}

async function saveCauses(db: Db, { causes }: Vocabulary) {
  const rows = causes.map((c, position) => ({
    slug: c.slug,
    position,
    label: c.label,
    meaning: c.meaning,
    roleSlug: c.role,
    mode: c.mode,
    usualProof: c.usualProof,
  }));
  await addOrUpdate(rows, {
    existing: await db.cause.findMany(slugOnly),
    createMany: (data) => db.cause.createMany({ data }),
    update: (data) => db.cause.update({ where: { slug: data.slug }, data }),
  });
}

async function saveFixes(db: Db, { fixes }: Vocabulary) {
  const rows = fixes.map((f, position) => ({
    slug: f.slug,
    position,
    label: f.label,
    meaning: f.meaning,
    action: f.action,
    roleSlug: f.role,
    howTo: f.howTo,
    first: f.first,
    minutes: f.minutes,
    partCostLowCents: f.partCostCents.low,
    partCostHighCents: f.partCostCents.high,
    stage: f.stage,
    risk: f.risk,
  }));
  await addOrUpdate(rows, {
    existing: await db.fix.findMany(slugOnly),
    createMany: (data) => db.fix.createMany({ data }),
    update: (data) => db.fix.update({ where: { slug: data.slug }, data }),
  });
  await db.fixAddresses.deleteMany({ where: { fixSlug: { in: fixes.map((f) => f.slug) } } });
  await db.fixAddresses.createMany({
    data: fixes.flatMap((f) => f.addresses.map((causeSlug, position) => ({ fixSlug: f.slug, causeSlug, position }))),
  });
}

/** Synonyms and closed-set lists are replaced whole: nothing refers to their rows. */
async function saveLists(db: Db, v: Vocabulary) {
  await db.synonym.deleteMany({ where: { kind: { not: 'model' } } });
  await db.synonym.createMany({
    data: [
      ...v.roles.flatMap((e) => synonymRows('role', e.slug, e.synonyms)),
      ...v.symptoms.flatMap((e) => [
        ...synonymRows('symptom', e.slug, e.synonyms),
        ...synonymRows('symptom-absent', e.slug, e.absentPhrases),
      ]),
      ...v.checks.flatMap((e) => [
        ...synonymRows('check', e.slug, e.synonyms),
        ...e.outcomes.flatMap((o) => synonymRows('outcome', `${e.slug}/${o.slug}`, o.synonyms)),
      ]),
      ...v.causes.flatMap((e) => synonymRows('cause', e.slug, e.synonyms)),
      ...v.fixes.flatMap((e) => synonymRows('fix', e.slug, e.synonyms)),
    ],
  });
  await db.entryTag.deleteMany({});
  await db.entryTag.createMany({
    data: [
      ...v.symptoms.flatMap((e) => tagRows('symptom', e.slug, 'category', e.categories)),
      ...v.checks.flatMap((e) => [
        ...tagRows('check', e.slug, 'category', e.categories),
        ...tagRows('check', e.slug, 'instrument', e.instruments),
        ...tagRows('check', e.slug, 'need', e.needs),
        ...tagRows('check', e.slug, 'caution', e.cautions),
      ]),
      ...v.causes.flatMap((e) => tagRows('cause', e.slug, 'category', e.categories)),
      ...v.fixes.flatMap((e) => [
        ...tagRows('fix', e.slug, 'category', e.categories),
        ...tagRows('fix', e.slug, 'instrument', e.instruments),
        ...tagRows('fix', e.slug, 'need', e.needs),
        ...tagRows('fix', e.slug, 'caution', e.cautions),
      ]),
    ],
  });
}
