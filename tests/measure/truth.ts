/**
 * How far each estimator is from the exact posterior of the world that the cases come from, at every moment of a repair, on
 * held-out cases: `npx tsx tests/measure/truth.ts demo|second [held-out cases]`.
 */
import type { World } from '../../seed/world';
import type { Coding } from '../../shared/domain/coding/coding';
import { decodeFinding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { CUTS, cutRecord } from '../../shared/stats/cut-record';
import type { CodedFinding } from '../../shared/stats/layout';
import { createPlainEstimator } from '../../shared/stats/plain-naive-bayes';
import { casebookOf, fitOn } from './trained-model';
import { worldNamed } from './worlds';

const CASES = 4200;
const TRAINING_SEED = 20_250;
const HELD_OUT_SEED = 31_337;

const [name = 'demo', heldOut = '2000'] = process.argv.slice(2);
const world = worldNamed(name);
const cases = world.drawCases(TRAINING_SEED, CASES).map(({ content }) => content);
process.stderr.write('cases drawn\n');
const { coding, counts, estimator } = casebookOf(world, cases, fitOn(world, cases));
process.stderr.write('settings fitted\n');
const plain = createPlainEstimator(coding.layout, counts);
const contenders = [
  { name: estimator.name, of: (device: number, seen: readonly CodedFinding[]) => estimator.probabilities(device, seen) },
  { name: plain.name, of: (device: number, seen: readonly CodedFinding[]) => plain.probabilities(device, seen) },
  { name: 'prior', of: (device: number) => estimator.prior(device) },
];
type Tally = { losses: number[]; excess: number[]; first: number };
const tallies = CUTS.map(() => [...contenders, { name: 'truth' }].map((): Tally => ({ losses: [], excess: [], first: 0 })));
for (const { content, board, trueCause } of world.drawCases(HELD_OUT_SEED, Number(heldOut))) {
  const record = encodeCase(coding, content);
  const { findings, lengths } = cutRecord(coding.layout, record);
  lengths.forEach((length, cut) => {
    const seen = findings.slice(0, length);
    const truth = trueBelief(world, coding, board, seen);
    if (truth === null) return;
    const cause = coding.causeOf(trueCause)!;
    contenders.forEach(({ of }, i) => score(tallies[cut]![i]!, { belief: of(record.device, seen), truth, cause }));
    score(tallies[cut]![contenders.length]!, { belief: truth, truth, cause });
  });
}
CUTS.forEach((cut, i) => {
  console.log(`${name}, ${cut}: ${tallies[i]![0]!.losses.length} held-out cases`);
  [...contenders, { name: 'truth' }].forEach((contender, j) => {
    const { losses, excess, first } = tallies[i]![j]!;
    const { mean, error } = meanOf(excess);
    console.log(
      `  ${contender.name.padEnd(28)} log loss ${meanOf(losses).mean.toFixed(3)}, excess ${mean.toFixed(3)} ± ${error.toFixed(3)}, first right ${((100 * first) / losses.length).toFixed(1)}%`,
    );
  });
});

/** Exact beliefs in the coding's order, the unlisted cause at 0; null where a misnoted list is impossible in the model. */
function trueBelief({ truePosterior }: World, of: Coding, board: string, seen: readonly CodedFinding[]): Float64Array | null {
  try {
    const posterior = truePosterior(
      board,
      seen.map((finding) => decodeFinding(of, finding)),
    );
    return Float64Array.from([...of.causes, ''], (cause) => posterior.get(cause) ?? 0);
  } catch (error) {
    if (error instanceof Error && /impossible/i.test(error.message)) return null;
    throw error;
  }
}

/** Excess as the mean divergence of the beliefs from the exact ones (nats): what the log loss exceeds in expectation. */
function score(tally: Tally, { belief, truth, cause }: { belief: Float64Array; truth: Float64Array; cause: number }): void {
  const bounded = (p: number) => Math.log(Math.max(p, 1e-12));
  tally.losses.push(-bounded(belief[cause]!));
  tally.excess.push(truth.reduce((sum, p, c) => (p > 0 ? sum + p * (Math.log(p) - bounded(belief[c]!)) : sum), 0));
  if (belief.indexOf(Math.max(...belief)) === cause) tally.first += 1;
}

function meanOf(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return { mean, error: Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length / values.length) };
}
