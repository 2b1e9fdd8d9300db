import type { OutcomeTable } from './estimator';

/**
 * How much it says for two units having the same cause that one shows value v and the other value u of the same
 * observable: ln P(v, u | same cause) / (P(v) P(u)) = ln (sum over causes of pi_c P(v|c) P(u|c)) / (q_v q_u), with
 * q = sum of pi_c P(.|c). Positive where the two point to the same causes, negative where they contradict each other,
 * near 0 where the observable says little about the cause. This is the weight of a field in record linkage (Fellegi &
 * Sunter 1969), with the cause in the place of the identity.
 *
 * @param prior P(cause), as long as the table has causes; it sums to 1
 * @param table P(value | cause), row by row, every entry above 0
 * @returns one weight in nats per value u of the observable
 */
export function findingAgreement(prior: Float64Array, { table }: Pick<OutcomeTable, 'table'>, value: number): Float64Array {
  const values = table.length / prior.length;
  const joint = new Float64Array(values);
  const marginal = new Float64Array(values);
  prior.forEach((p, cause) => {
    const row = cause * values;
    const own = p * (table[row + value] as number);
    for (let u = 0; u < values; u += 1) {
      const there = table[row + u] as number;
      joint[u] = (joint[u] as number) + own * there;
      marginal[u] = (marginal[u] as number) + p * there;
    }
  });
  const own = marginal[value] as number;
  return joint.map((together, u) => Math.log(together / (own * (marginal[u] as number))));
}
