/** Names by number, in the order in which they were first asked for. */
export type NamePool = { readonly names: string[]; readonly numbers: Map<string, number> };

/** A pool of these names. */
export function createNamePool(names: readonly string[] = []): NamePool {
  return { names: [...names], numbers: new Map(names.map((name, number) => [name, number])) };
}

/** The number of a name; a new name gets the next one. */
export function numberOfName(pool: NamePool, name: string): number {
  const known = pool.numbers.get(name);
  if (known !== undefined) return known;
  pool.numbers.set(name, pool.names.length);
  return pool.names.push(name) - 1;
}
