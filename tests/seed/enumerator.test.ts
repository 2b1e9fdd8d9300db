import { describe, expect, it } from 'vitest';
import { createNetwork, logEvidence, logJoint, type NetworkNode, posterior } from '../../seed/enumerator';

const YES_NO = ['yes', 'no'] as const;
const binary = (name: string, parents: string[], yes: number[]): NetworkNode => ({
  name,
  values: YES_NO,
  parents,
  table: yes.map((p) => [p, 1 - p]),
});

/** S. L. Lauritzen and D. J. Spiegelhalter, J. R. Statist. Soc. B 50 (1988) 157-224: the chest clinic. */
const chestClinic = createNetwork([
  binary('asia', [], [0.01]),
  binary('tub', ['asia'], [0.05, 0.01]),
  binary('smoke', [], [0.5]),
  binary('lung', ['smoke'], [0.1, 0.01]),
  binary('bronc', ['smoke'], [0.6, 0.3]),
  binary('either', ['tub', 'lung'], [1, 1, 1, 0]),
  binary('xray', ['either'], [0.98, 0.05]),
  binary('dysp', ['bronc', 'either'], [0.9, 0.8, 0.7, 0.1]),
]);

/** J. Pearl's burglar alarm, with the numbers of S. Russell and P. Norvig, Artificial Intelligence, 3rd ed., ch. 14. */
const burglary = createNetwork([
  binary('B', [], [0.001]),
  binary('E', [], [0.002]),
  binary('A', ['B', 'E'], [0.95, 0.94, 0.29, 0.001]),
  binary('J', ['A'], [0.9, 0.05]),
  binary('M', ['A'], [0.7, 0.01]),
]);

/** The lawn sprinkler, as in S. Russell and P. Norvig and in K. Murphy's tutorial; tables from memory, values recomputed. */
const sprinkler = createNetwork([
  binary('C', [], [0.5]),
  binary('S', ['C'], [0.1, 0.5]),
  binary('R', ['C'], [0.8, 0.2]),
  binary('W', ['S', 'R'], [0.99, 0.9, 0.9, 0]),
]);

type Known = Record<string, 'yes' | 'no'>;
const yes = (network: typeof burglary, query: string, evidence: Known) => posterior(network, query, evidence).get('yes');

describe('posterior on the chest clinic', () => {
  // Rows: evidence, P(evidence), then P(yes) of tub, lung, bronc, either. First three rows are the values in the unit
  // tests and tutorials of the gRain package (0.0104, 0.055, 0.45; 0.004501375; 0.09952515; 0.8114021); the further
  // digits and the other rows were recomputed from the published tables.
  const rows: [Known, number, number, number, number, number][] = [
    [{}, 1, 0.0104, 0.055, 0.45, 0.064828],
    [{ asia: 'yes', dysp: 'yes' }, 0.004501375, 0.087751, 0.0995251, 0.8114021, 0.1822999],
    [{ asia: 'yes', dysp: 'yes', smoke: 'yes' }, 0.0028175, 0.0727595, 0.1455191, 0.8672582, 0.2110027],
    [{ dysp: 'yes' }, 0.4359706, 0.0188453, 0.1027592, 0.8339673, 0.1205358],
    [{ xray: 'yes' }, 0.11029004, 0.0924109, 0.4887114, 0.5063262, 0.5760397],
    [{ asia: 'yes', dysp: 'yes', xray: 'yes' }, 0.000988227, 0.3917117, 0.4442705, 0.6288218, 0.8137687],
    [{ asia: 'yes', dysp: 'yes', xray: 'no' }, 0.003513148, 0.0022487, 0.0025504, 0.8627608, 0.0046716],
    [{ asia: 'no', xray: 'yes', dysp: 'yes' }, 0.069681878, 0.1099939, 0.6237628, 0.6826208, 0.727519],
  ];
  it.each(rows)('given %o finds the published probabilities', (evidence, probability, tub, lung, bronc, either) => {
    expect(Math.exp(logEvidence(chestClinic, evidence))).toBeCloseTo(probability, 8);
    expect(yes(chestClinic, 'tub', evidence)).toBeCloseTo(tub, 6);
    expect(yes(chestClinic, 'lung', evidence)).toBeCloseTo(lung, 6);
    expect(yes(chestClinic, 'bronc', evidence)).toBeCloseTo(bronc, 6);
    expect(yes(chestClinic, 'either', evidence)).toBeCloseTo(either, 6);
  });

  it('finds the marginals of xray and dysp', () => {
    expect(yes(chestClinic, 'xray', {})).toBeCloseTo(0.11029004, 8);
    expect(yes(chestClinic, 'dysp', {})).toBeCloseTo(0.4359706, 7);
  });

  it('finds the joint distribution of lung and bronc', () => {
    // 0.0315, 0.0235, 0.4185, 0.5265: printed in a tutorial of the gRain package.
    const joint = logJoint(chestClinic, ['lung', 'bronc'], {});
    const p = (lung: string, bronc: string) => Math.exp(joint.get(`${lung}\t${bronc}`) as number);
    expect(p('yes', 'yes')).toBeCloseTo(0.0315, 10);
    expect(p('yes', 'no')).toBeCloseTo(0.0235, 10);
    expect(p('no', 'yes')).toBeCloseTo(0.4185, 10);
    expect(p('no', 'no')).toBeCloseTo(0.5265, 10);
  });
});

describe('posterior on the burglar alarm', () => {
  // Russell and Norvig print 0.284, 0.000628 and 0.558 (pp. 514, 523, 528); further digits recomputed.
  const rows: [string, Known, number][] = [
    ['B', { J: 'yes', M: 'yes' }, 0.284171835364393],
    ['B', { J: 'yes' }, 0.016283729947],
    ['B', { M: 'yes' }, 0.056117454039],
    ['A', {}, 0.002516442],
    ['E', { J: 'yes', M: 'yes' }, 0.176066838405],
    ['A', { J: 'yes', M: 'yes' }, 0.760692038863],
    ['J', { B: 'yes' }, 0.849017],
    ['A', { J: 'yes', M: 'yes', B: 'no', E: 'no' }, 0.557768924303],
    ['B', { A: 'yes' }, 0.373551228282],
    ['B', { A: 'yes', E: 'yes' }, 0.003268423588],
    ['B', { J: 'no', M: 'yes' }, 0.006876246073],
  ];
  it.each(rows)('finds P(%s | %o)', (query, evidence, expected) => {
    expect(yes(burglary, query, evidence)).toBeCloseTo(expected, 11);
  });

  it('finds the probabilities of the evidence', () => {
    expect(Math.exp(logEvidence(burglary, { J: 'yes', M: 'yes' }))).toBeCloseTo(0.002084100239, 12);
    const all: Known = { J: 'yes', M: 'yes', A: 'yes', B: 'no', E: 'no' };
    expect(Math.exp(logEvidence(burglary, all))).toBeCloseTo(0.00062811126, 11);
  });
});

describe('posterior on the lawn sprinkler', () => {
  // Published values recalled (K. Murphy's tutorial; Russell and Norvig), each recomputed by hand from the tables.
  const rows: [string, Known, number][] = [
    ['W', {}, 0.6471],
    ['S', { W: 'yes' }, 0.429764],
    ['R', { W: 'yes' }, 0.707928],
    ['S', { W: 'yes', R: 'yes' }, 0.194499],
    ['R', { S: 'yes' }, 0.3],
    ['C', { W: 'yes' }, 0.5758],
  ];
  it.each(rows)('finds P(%s | %o)', (query, evidence, expected) => {
    expect(yes(sprinkler, query, evidence)).toBeCloseTo(expected, 5);
  });
});

describe('createNetwork', () => {
  it('refuses an unknown parent, a missing row, a row that does not sum to 1, a twin name and a cycle', () => {
    expect(() => createNetwork([binary('x', ['y'], [0.5, 0.5])])).toThrow('unknown parent y');
    expect(() => createNetwork([binary('x', [], [0.5]), binary('y', ['x'], [0.5])])).toThrow('needs 2 rows');
    expect(() => createNetwork([{ name: 'x', values: YES_NO, parents: [], table: [[0.5, 0.4]] }])).toThrow('no distribution');
    expect(() => createNetwork([binary('x', [], [0.5]), binary('x', [], [0.5])])).toThrow('same name');
    expect(() => createNetwork([binary('x', ['y'], [0.5, 0.5]), binary('y', ['x'], [0.5, 0.5])])).toThrow('cycle');
  });
});

describe('logJoint', () => {
  it('keeps its sum where plain products underflow', () => {
    // 400 observed children of one coin, each with probability 1e-3 whatever the coin: 10^-1200 in all.
    const children = Array.from({ length: 400 }, (_, i) => binary(`x${i}`, ['coin'], [0.001, 0.001]));
    const network = createNetwork([binary('coin', [], [0.25]), ...children]);
    const evidence = Object.fromEntries(children.map((node) => [node.name, 'yes']));
    expect(logEvidence(network, evidence)).toBeCloseTo(400 * Math.log(0.001), 6);
    expect(yes(network, 'coin', evidence as Known)).toBeCloseTo(0.25, 9);
  });

  it('refuses an unknown node and an unknown value, and impossible evidence has no posterior', () => {
    expect(() => posterior(burglary, 'Z', {})).toThrow('no node Z');
    expect(() => posterior(burglary, 'B', { J: 'maybe' })).toThrow('no value maybe');
    expect(() => posterior(sprinkler, 'C', { W: 'yes', S: 'no', R: 'no' })).toThrow('impossible');
  });
});
