/** Values of the details that outsiders may know of a case: device, month, cause and the like. */
export type CaseDetails = Readonly<Record<string, string>>;

/** How many accepted cases share these details. */
export type DetailCount = { details: CaseDetails; count: number };

export type Rarity = {
  /** Cases that share all the details with this one, itself included. */
  alike: number;
  /** Whether fewer than `k` do: the details single the case out. */
  rare: boolean;
  /** Details that, left out one at a time, would hide the case among at least `k`; empty where it is not rare or none does. */
  hidesWithout: string[];
};

/** Group sizes that may be asked for: 2 asks for at least one other, 5 for four. */
export type GroupSize = 2 | 3 | 4 | 5;

/**
 * Whether a case's details make it rare among the accepted cases: a case is hidden when it cannot be told from at
 * least k - 1 others by them (k-anonymity: L. Sweeney, Int. J. Uncertainty, Fuzziness and Knowledge-Based Systems
 * 10(5), 2002, 557-570). `counts` are of the cases without this one. Only the details of the case itself are compared.
 */
export function rarityOf(details: CaseDetails, counts: readonly DetailCount[], k: GroupSize): Rarity {
  const names = Object.keys(details);
  const alikeBy = (compared: readonly string[]) =>
    1 + counts.reduce((sum, entry) => sum + (compared.every((name) => entry.details[name] === details[name]) ? entry.count : 0), 0);
  const alike = alikeBy(names);
  const rare = alike < k;
  const hidesWithout = rare ? names.filter((left) => alikeBy(names.filter((name) => name !== left)) >= k) : [];
  return { alike, rare, hidesWithout };
}

/**
 * The size of the smallest group of records that share the named details: the k of the whole table. 0 for no records.
 */
export function smallestGroup(records: readonly CaseDetails[], names: readonly string[]): number {
  return Math.min(...groups(records, names).map((group) => group.length), records.length);
}

/**
 * The fewest different values of `sensitive` in any group: the distinct l of l-diversity (A. Machanavajjhala et al., ACM
 * TKDD 1(1), 2007). 1 means that some group gives its value away although its records cannot be told apart. 0 for no
 * records.
 */
export function fewestValues(records: readonly CaseDetails[], names: readonly string[], sensitive: string): number {
  const values = groups(records, names).map((group) => new Set(group.map((record) => record[sensitive])).size);
  return Math.min(...values, records.length);
}

function groups(records: readonly CaseDetails[], names: readonly string[]): CaseDetails[][] {
  const byKey = new Map<string, CaseDetails[]>();
  for (const record of records) {
    const key = JSON.stringify(names.map((name) => record[name] ?? null));
    byKey.set(key, [...(byKey.get(key) ?? []), record]);
  }
  return [...byKey.values()];
}
