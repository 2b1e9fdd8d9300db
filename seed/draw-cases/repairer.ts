import type { Instrument, Need } from '../../shared/schemas/terms';
import { integer } from '../random';
import type { Random } from '../world';

/** How one volunteer works. Nothing here looks at what is really wrong. */
export type Repairer = {
  /** 0 beginner to 1 old hand. */
  readonly skill: number;
  /** How much each finding moves them, in parts of what it is worth. */
  readonly weight: number;
  /** Standard deviation, in nats, of what they believe for no reason. */
  readonly prejudice: number;
  /** P(begins with each of the usual first checks). */
  readonly routine: number;
  /** P(begins outside the case). */
  readonly outsideFirst: number;
  /** Belief at which they reach for a fix. */
  readonly haste: number;
  readonly maxChecks: number;
  readonly maxFixes: number;
  readonly instruments: ReadonlySet<Instrument>;
  readonly has: ReadonlySet<Need>;
  /** P(writes down a number, a designator, readings). */
  readonly notes: number;
};

/** Draws somebody: mostly middling, some very good, some in a hurry. */
export function drawRepairer(random: Random): Repairer {
  const skill = (random() + random()) / 2;
  const owns = (chance: number) => random() < chance;
  const instruments = new Set<Instrument>(['none', 'multimeter', 'soldering-iron', 'magnifier']);
  if (owns(0.82)) instruments.add('logic-probe');
  if (owns(0.3 + 0.4 * skill)) instruments.add('oscilloscope');
  if (owns(0.25 + 0.2 * skill)) instruments.add('frequency-counter');
  if (owns(0.3 + 0.4 * skill)) instruments.add('capacitor-tester');
  if (owns(0.45)) instruments.add('bench-supply');
  if (owns(0.6)) instruments.add('test-media');
  if (owns(0.6)) instruments.add('thermometer');
  if (owns(0.2 + 0.2 * skill)) instruments.add('high-voltage-probe');
  const has = new Set<Need>(['new-part']);
  if (owns(0.55)) has.add('working-unit');
  if (owns(0.45)) has.add('donor');
  return {
    skill,
    weight: 0.7 + 0.3 * skill,
    prejudice: 0.75 - 0.5 * skill,
    routine: 0.15 + 0.45 * random(),
    outsideFirst: random() < 0.5 + 0.3 * skill ? 0.35 + 0.4 * random() : 0.08,
    haste: 0.4 + 0.45 * random(),
    maxChecks: integer(random, 4, 10 + Math.round(6 * skill)),
    maxFixes: integer(random, 4, 7),
    instruments,
    has,
    notes: random(),
  };
}
