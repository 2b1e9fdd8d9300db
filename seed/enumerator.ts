/**
 * Exact inference on small discrete Bayesian networks, by summing over every assignment of the nodes that matter.
 * Slow and plain on purpose: it is what faster code is checked against.
 */

/** One variable: its values, its parents, and P(value | parents). */
export type NetworkNode = {
  readonly name: string;
  readonly values: readonly string[];
  readonly parents: readonly string[];
  /** One row per combination of the parents' values, the last parent running fastest; each row sums to 1. */
  readonly table: readonly (readonly number[])[];
};

/** A checked network, nodes in an order in which parents come before children. */
export type Network = { readonly nodes: readonly NetworkNode[]; readonly byName: ReadonlyMap<string, NetworkNode> };

/** What is known: node name to the value observed. */
export type Evidence = Readonly<Record<string, string>>;

const ROW_SUM_TOLERANCE = 1e-9;

/** Checks names, parents, shapes and row sums; throws an Error that names the node at fault, also on a cycle. */
export function createNetwork(nodes: readonly NetworkNode[]): Network {
  const byName = new Map(nodes.map((node) => [node.name, node]));
  if (byName.size !== nodes.length) throw new Error('Two nodes of the network have the same name.');
  for (const node of nodes) checkNode(node, byName);
  return { nodes: parentsFirst(nodes, new Set()), byName };
}

function checkNode(node: NetworkNode, byName: ReadonlyMap<string, NetworkNode>): void {
  let rows = 1;
  for (const parent of node.parents) {
    const known = byName.get(parent);
    if (!known) throw new Error(`Node ${node.name} has an unknown parent ${parent}.`);
    rows *= known.values.length;
  }
  if (node.table.length !== rows) throw new Error(`Node ${node.name} needs ${rows} rows, has ${node.table.length}.`);
  for (const row of node.table) {
    const sum = row.reduce((a, b) => a + b, 0);
    const valid = row.length === node.values.length && row.every((p) => p >= 0) && Math.abs(sum - 1) < ROW_SUM_TOLERANCE;
    if (!valid) throw new Error(`Node ${node.name} has a row that is no distribution: ${row.join(', ')}.`);
  }
}

/** Parents before children, nodes of `early` as soon as their parents allow, so that impossible branches end soon. */
function parentsFirst(nodes: readonly NetworkNode[], early: ReadonlySet<string>): NetworkNode[] {
  const names = new Set(nodes.map((node) => node.name));
  const placed = new Set<string>();
  const order: NetworkNode[] = [];
  while (order.length < nodes.length) {
    const ready = nodes.filter(
      (node) => !placed.has(node.name) && node.parents.every((parent) => placed.has(parent) || !names.has(parent)),
    );
    const next = ready.find((node) => early.has(node.name)) ?? ready[0];
    if (!next) throw new Error('The network has a cycle.');
    placed.add(next.name);
    order.push(next);
  }
  return order;
}

/** Nodes that are in `targets` or above them; all others sum to 1 and may be left out. */
export function ancestorsOf(network: Network, targets: Iterable<string>): Set<string> {
  const wanted = new Set<string>();
  const open = [...targets];
  while (open.length > 0) {
    const name = open.pop() as string;
    if (wanted.has(name)) continue;
    const node = network.byName.get(name);
    if (!node) throw new Error(`The network has no node ${name}.`);
    wanted.add(name);
    open.push(...node.parents);
  }
  return wanted;
}

/** ln(exp(a) + exp(b)) without overflow; -Infinity is an empty sum. */
function addLogs(a: number, b: number): number {
  const high = Math.max(a, b);
  return high === Number.NEGATIVE_INFINITY ? high : high + Math.log1p(Math.exp(Math.min(a, b) - high));
}

/**
 * ln P(query = combination, evidence) for each combination of the query nodes' values, keyed by the values
 * joined with a tab in the order of `query`. Combinations that are impossible are -Infinity or left out.
 */
export function logJoint(network: Network, query: readonly string[], evidence: Evidence): Map<string, number> {
  const known = new Map(Object.entries(evidence));
  const wanted = ancestorsOf(network, [...query, ...known.keys()]);
  const order = parentsFirst(
    network.nodes.filter((node) => wanted.has(node.name)),
    new Set(known.keys()),
  );
  const rowOf = new Map(network.nodes.map((node) => [node.name, rowFinder(network, node)]));
  const chosen = new Map<string, number>();
  const sums = new Map<string, number>();

  const visit = (depth: number, logProbability: number): void => {
    const node = order[depth];
    if (!node) {
      const key = query.map((name) => valueName(network, name, chosen)).join('\t');
      sums.set(key, addLogs(sums.get(key) ?? Number.NEGATIVE_INFINITY, logProbability));
      return;
    }
    const row = node.table[(rowOf.get(node.name) as RowFinder)(chosen)] as readonly number[];
    const observed = known.get(node.name);
    if (observed !== undefined && !node.values.includes(observed)) {
      throw new Error(`Node ${node.name} has no value ${observed}.`);
    }
    node.values.forEach((value, index) => {
      const probability = row[index] as number;
      if (probability === 0 || (observed !== undefined && observed !== value)) return;
      chosen.set(node.name, index);
      visit(depth + 1, logProbability + Math.log(probability));
    });
    chosen.delete(node.name);
  };
  visit(0, 0);
  return sums;
}

type RowFinder = (chosen: ReadonlyMap<string, number>) => number;

function rowFinder(network: Network, node: NetworkNode): RowFinder {
  const parents = node.parents.map((name) => ({ name, size: (network.byName.get(name) as NetworkNode).values.length }));
  return (chosen) => parents.reduce((row, parent) => row * parent.size + (chosen.get(parent.name) as number), 0);
}

function valueName(network: Network, name: string, chosen: ReadonlyMap<string, number>): string {
  return (network.byName.get(name) as NetworkNode).values[chosen.get(name) as number] as string;
}

/** ln P(evidence); -Infinity where the evidence is impossible, 0 for none. */
export function logEvidence(network: Network, evidence: Evidence): number {
  return logJoint(network, [], evidence).get('') ?? Number.NEGATIVE_INFINITY;
}

/** P(query node | evidence), every value listed. Throws where the evidence is impossible. */
export function posterior(network: Network, query: string, evidence: Evidence): Map<string, number> {
  const joint = logJoint(network, [query], evidence);
  const total = [...joint.values()].reduce(addLogs, Number.NEGATIVE_INFINITY);
  if (total === Number.NEGATIVE_INFINITY) throw new Error('The evidence is impossible under this network.');
  const values = (network.byName.get(query) as NetworkNode).values;
  return new Map(values.map((value) => [value, Math.exp((joint.get(value) ?? Number.NEGATIVE_INFINITY) - total)]));
}
