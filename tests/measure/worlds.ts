import { demoWorld } from '../../seed/demo-world';
import type { World } from '../../seed/world';
import { secondWorld } from '../second-world/second-world';

/** The worlds that things are measured on: the demo's, and the one that nothing was built or tuned on. */
export const WORLDS: Readonly<Record<string, World>> = { demo: demoWorld, second: secondWorld };

/** A world by its name. Throws where there is none. */
export function worldNamed(name: string): World {
  const world = WORLDS[name];
  if (world === undefined) throw new Error(`There is no world "${name}"; choose from ${Object.keys(WORLDS).join(', ')}.`);
  return world;
}
