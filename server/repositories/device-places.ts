import type { Db } from '../db';
import type { DevicePlace } from './case-rows';

/** Every device slug a case may name (board revisions and models) and where it points. */
export async function readDevicePlaces(db: Db): Promise<Map<string, DevicePlace>> {
  const places = new Map<string, DevicePlace>();
  for (const { slug } of await db.deviceModel.findMany({ select: { slug: true } })) {
    places.set(slug, { modelSlug: slug, boardSlug: null });
  }
  for (const board of await db.board.findMany({ select: { slug: true, modelSlug: true } })) {
    places.set(board.slug, { modelSlug: board.modelSlug, boardSlug: board.slug });
  }
  return places;
}

/** The place of one device slug. Throws where the catalogue has none: check the content before storing it. */
export function getDevicePlace(places: ReadonlyMap<string, DevicePlace>, device: string): DevicePlace {
  const place = places.get(device);
  if (!place) throw new Error(`No device "${device}" in the catalogue.`);
  return place;
}
