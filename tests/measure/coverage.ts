/**
 * How often 90 % intervals hold the exact probability, over all pairs of a held-out record and a cause with an estimate of at least
 * 1 %, by moment of the repair, by cases on the board and by size of the estimate, with the mean width:
 * `npx tsx tests/measure/coverage.ts demo|second [cases] [held-out cases] [--settings fitted.json]`.
 * Causes on none of the cases are the unlisted one, which is compared with all of them together.
 */
import { parseArgs } from 'node:util';
import { decodeFinding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { CUTS, cutRecord } from '../../shared/stats/cut-record';
import { casebookOf, keptFit } from './trained-model';
import { worldNamed } from './worlds';

const TRAINING_SEED = 20_250;
const HELD_OUT_SEED = 31_337;
const LEAST_ESTIMATE = 0.01;
const BOARD_CASES = [0, 30, 150, 500];
const ESTIMATES = [0.01, 0.05, 0.2, 0.5];

const { values, positionals } = parseArgs({ allowPositionals: true, options: { settings: { type: 'string' } } });
const [name = 'demo', count = '4200', heldOut = '500'] = positionals;
const world = worldNamed(name);
const cases = world.drawCases(TRAINING_SEED, Number(count)).map(({ content }) => content);
const { coding, counts, estimator } = casebookOf(world, cases, keptFit(world, cases, values.settings));

type Tally = { pairs: number; covered: number; width: number };
const tallies = new Map<string, Tally>();

for (const { content, board } of world.drawCases(HELD_OUT_SEED, Number(heldOut))) {
  const record = encodeCase(coding, content);
  const { findings, lengths } = cutRecord(coding.layout, record);
  lengths.forEach((length, cut) => {
    const seen = findings.slice(0, length);
    const exact = exactly(board, seen);
    if (exact === null) return;
    const { probability, low, high } = estimator.posterior(record.device, seen);
    const onBoard = counts.records[record.device] as number;
    probability.forEach((estimate, cause) => {
      if (estimate < LEAST_ESTIMATE) return;
      const [from, to] = [low[cause] as number, high[cause] as number];
      const covered = (exact[cause] as number) >= from && (exact[cause] as number) <= to;
      const strata = [
        'all',
        CUTS[cut] as string,
        `board with ${stratum(BOARD_CASES, onBoard)} cases or more`,
        `estimate of ${stratum(ESTIMATES, estimate)} or more`,
      ];
      for (const each of strata) add(each, covered, to - from);
    });
  });
}
console.log(`${name}, ${count} cases, ${heldOut} held out`);
for (const [label, { pairs, covered, width }] of [...tallies].sort()) {
  console.log(`  ${label.padEnd(34)} pairs ${pairs}, coverage ${(covered / pairs).toFixed(3)}, mean width ${(width / pairs).toFixed(3)}`);
}

/** Exact probabilities in the coding's order, unlisted last; null where a misnoted list is impossible in the model. */
function exactly(board: string, seen: readonly { observable: number; value: number }[]): Float64Array | null {
  try {
    const stated = seen.map((finding) => decodeFinding(coding, finding));
    const truth = new Float64Array(coding.causes.length + 1);
    for (const [slug, p] of world.truePosterior(board, stated)) {
      const cause = coding.causeOf(slug) as number;
      truth[counts.causeRecords[cause] === 0 ? coding.causes.length : cause]! += p;
    }
    return truth;
  } catch (error) {
    if (error instanceof Error && /impossible/i.test(error.message)) return null;
    throw error;
  }
}

function stratum(starts: readonly number[], value: number): number {
  return starts.findLast((start) => value >= start) ?? (starts[0] as number);
}

function add(label: string, covered: boolean, width: number): void {
  const tally = tallies.get(label) ?? { pairs: 0, covered: 0, width: 0 };
  tallies.set(label, tally);
  tally.pairs += 1;
  tally.covered += covered ? 1 : 0;
  tally.width += width;
}
