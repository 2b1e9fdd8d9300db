import { FIX_RESULTS } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import { createNetwork, type Evidence, type Network, type NetworkNode } from '../enumerator';
import { type BoardModel, wayCount } from './board-model';

/**
 * A board's model as a Bayesian network: cause, then way of failing, then every symptom, check and fix; each fix has a
 * node for its part. Only the named observables get nodes, to keep the network small.
 */
export function boardNetwork(model: BoardModel, findings: readonly Finding[]): Network {
  const wanted = new Set(findings.map(nodeName));
  const ways = Array.from({ length: wayCount(model) }, (_, way) => way);
  const rows = (numbers: Float64Array, size: number) => ways.map((way) => [...numbers.slice(way * size, way * size + size)]);
  const nodes: NetworkNode[] = [
    { name: 'cause', values: model.causes, parents: [], table: [[...model.prior]] },
    { name: 'way', values: ways.map(String), parents: ['cause'], table: waysOfCauses(model) },
  ];
  for (const [slug, symptom] of model.symptoms) {
    if (!wanted.has(`symptom ${slug}`)) continue;
    const table = ways.map((way) => [symptom.present[way] as number, 1 - (symptom.present[way] as number)]);
    nodes.push({ name: `symptom ${slug}`, values: ['present', 'absent'], parents: ['way'], table });
  }
  for (const [slug, check] of model.checks) {
    if (!wanted.has(`check ${slug}`)) continue;
    nodes.push({
      name: `check ${slug}`,
      values: check.outcomes,
      parents: ['way'],
      table: rows(check.table, check.outcomes.length),
    });
  }
  for (const [slug, fix] of model.fixes) {
    if (!wanted.has(`fix ${slug}`)) continue;
    const good = rows(fix.good, FIX_RESULTS.length);
    const bad = rows(fix.bad, FIX_RESULTS.length);
    const table = ways.flatMap((way) => [good[way] as number[], bad[way] as number[]]);
    nodes.push({ name: `part ${slug}`, values: ['good', 'bad'], parents: [], table: [[1 - fix.badPart, fix.badPart]] });
    nodes.push({ name: `fix ${slug}`, values: FIX_RESULTS, parents: ['way', `part ${slug}`], table });
  }
  return createNetwork(nodes);
}

function waysOfCauses(model: BoardModel): number[][] {
  return model.causes.map((_, cause) => [...model.wayShare].map((share, way) => (model.wayCause[way] === cause ? share : 0)));
}

/** The findings as evidence on the network of `boardNetwork`. */
export function findingsEvidence(findings: readonly Finding[]): Evidence {
  return Object.fromEntries(findings.map((finding) => [nodeName(finding), finding.value]));
}

const nodeName = (finding: Finding): string => `${finding.kind} ${finding.id}`;
