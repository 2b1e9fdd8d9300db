import { type CodedFinding, type Layout, SYMPTOM } from './layout';

/** Powers tried by the fit; 0 counts every symptom in full. */
export const DAMPINGS = [0, 0.1, 0.2, 0.3, 0.4, 0.5];

/** Number of symptoms that are present; the findings must be distinct. */
export function presentSymptoms(layout: Layout, findings: readonly CodedFinding[]): number {
  return findings.filter(({ observable, value }) => layout.kinds[observable] === SYMPTOM && value === 1).length;
}

/**
 * What the exponents of all symptoms are multiplied by, so many of them being present: symptoms of one fault come together, so two
 * of them say less than twice what one says, and what is absent beside them less, too. `present` to the power of minus the
 * damping, which is fitted; 1 for one symptom or none.
 */
export function symptomFactor(present: number, damping: number): number {
  return present <= 1 ? 1 : present ** -damping;
}
