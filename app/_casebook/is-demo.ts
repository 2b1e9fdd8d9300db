import { serverCaller } from '../_trpc/server';
import { attempt } from './attempt';

/** Whether the casebook is the invented one; every page says so. False where the casebook does not answer. */
export async function isDemo(): Promise<boolean> {
  const { value } = await attempt(() => serverCaller().casebook.overview());
  return value?.demo ?? false;
}
