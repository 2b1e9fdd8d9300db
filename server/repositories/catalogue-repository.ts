import { setImmediate as breath } from 'node:timers/promises';
import { catalogueSchema, type Board, type DeviceCatalogue, type DeviceModel } from '../../shared/schemas/device';
import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';
import { groupBy, readSynonyms, synonymRows } from './entry-lists';

/**
 * Stores the catalogue of devices. May run again: models and boards are added or updated by slug and never
 * removed, parts of a named board are replaced. Roles and checks that it names must be stored before.
 */
export async function saveCatalogue(db: Db, catalogue: DeviceCatalogue): Promise<void> {
  let boardPosition = 0;
  for (const [position, model] of catalogue.models.entries()) {
    await saveModel(db, model, position);
    for (const board of model.boards) await saveBoard(db, model.slug, board, boardPosition++);
  }
}

async function saveModel(db: Db, model: DeviceModel, position: number) {
  const { slug, name, category, summary, maker } = model;
  await db.maker.upsert({ where: { slug: maker.slug }, create: maker, update: { name: maker.name }, select: { slug: true } });
  const data = { position, name, category, summary, makerSlug: maker.slug };
  await db.deviceModel.upsert({ where: { slug }, create: { slug, ...data }, update: data, select: { slug: true } });
  await db.synonym.deleteMany({ where: { kind: 'model', owner: slug } });
  await db.synonym.createMany({ data: synonymRows('model', slug, model.synonyms) });
}

async function saveBoard(db: Db, modelSlug: string, board: Board, position: number) {
  const { slug, revision, summary, parts, impossibleChecks } = board;
  const data = { position, modelSlug, revision, summary };
  await db.board.upsert({ where: { slug }, create: { slug, ...data }, update: data, select: { slug: true } });
  await db.boardPart.deleteMany({ where: { boardSlug: slug } });
  await db.boardPart.createMany({
    data: parts.map((p, index) => ({
      boardSlug: slug,
      designator: p.designator,
      position: index,
      roleSlug: p.role,
      partNumber: p.partNumber,
      package: p.package,
      pins: p.pins,
    })),
  });
  await bulkInsert(
    db,
    'PartPin',
    parts.flatMap((p) =>
      p.pinNames.map((name, index) => ({ boardSlug: slug, designator: p.designator, number: index + 1, name })),
    ),
  );
  await db.impossibleCheck.deleteMany({ where: { boardSlug: slug } });
  await db.impossibleCheck.createMany({
    data: impossibleChecks.map((checkSlug, index) => ({ boardSlug: slug, checkSlug, position: index })),
  });
}

const inOrder = { position: 'asc' } as const;

const boardSelect = {
  slug: true,
  revision: true,
  summary: true,
  parts: {
    orderBy: inOrder,
    select: {
      designator: true,
      roleSlug: true,
      partNumber: true,
      package: true,
      pins: true,
    },
  },
  impossible: { orderBy: inOrder, select: { checkSlug: true } },
} as const;

/** The whole catalogue, in the order in which it was saved. Null where no device is stored yet. */
export async function findCatalogue(db: Db): Promise<DeviceCatalogue | null> {
  const synonyms = await readSynonyms(db, ['model']);
  const pinNames = await readPinNames(db);
  const models = await db.deviceModel.findMany({
    orderBy: inOrder,
    select: {
      slug: true,
      name: true,
      category: true,
      summary: true,
      maker: { select: { slug: true, name: true } },
      boards: { orderBy: inOrder, select: boardSelect },
    },
  });
  if (models.length === 0) return null;
  // Reading waited for nothing, and judging what was read takes as long again.
  await breath();
  return catalogueSchema.parse({
    models: models.map((model) => ({
      ...model,
      synonyms: synonyms('model', model.slug),
      boards: model.boards.map(({ slug, revision, summary, parts, impossible }) => ({
        slug,
        revision,
        summary,
        parts: parts.map(({ roleSlug, ...part }) => ({
          ...part,
          role: roleSlug,
          pinNames: pinNames(slug, part.designator),
        })),
        impossibleChecks: impossible.map((i) => i.checkSlug),
      })),
    })),
  });
}

/** All pins by one query: nested under their parts, their compound keys would not fit into one statement. */
async function readPinNames(db: Db) {
  const pins = await db.partPin.findMany({
    orderBy: [{ boardSlug: 'asc' }, { designator: 'asc' }, { number: 'asc' }],
    select: { boardSlug: true, designator: true, name: true },
  });
  const byPart = groupBy(pins, (pin) => `${pin.boardSlug} ${pin.designator}`);
  return (board: string, designator: string): string[] => (byPart.get(`${board} ${designator}`) ?? []).map((pin) => pin.name);
}
