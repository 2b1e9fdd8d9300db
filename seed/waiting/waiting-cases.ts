import type { CaseContent } from '../../shared/schemas/case';
import { outcomeOfReading } from '../../shared/domain/readings/outcome-of-reading';
import type { ProposalKind } from '../../shared/schemas/submission';
import { demoWorld } from '../demo-world';
import { vocabulary } from '../vocabulary';

/** A submission of the demo that waits for review. `newcomer`: its contributor has nothing published yet. */
export type WaitingSubmission = {
  content: CaseContent;
  proposals: { kind: ProposalKind; word: string; meaning: string }[];
  newcomer: boolean;
};

/** Sentences that contributors kept although they say who or where somebody is; every one of it is invented. */
const SAYS_WHO = [
  'Questions to osric@marrowlane.example, I still have the old part.',
  'The owner rings on 0491 570 156 when the weather is damp.',
  'Picked up on 14 March 2025, serial number QB8-4471-2209, both stickers still on.',
];

const NEW_WORDS: WaitingSubmission['proposals'] = [
  { kind: 'symptom', word: 'Purple fringe', meaning: 'Bright shapes have a purple edge on their right side.' },
  { kind: 'symptom', word: 'Gray screan', meaning: 'The screen is evenly grey and nothing else is to be seen.' },
  { kind: 'check', word: 'Smell at the vents', meaning: 'Whether there is a burnt smell at the vents after five minutes.' },
];

/**
 * The demo's queue: plain ones, ones that say who somebody is, ones that tell an accepted case again, contradictory ones
 * and ones with new words, in a mixed order that is the same on every run.
 *
 * @param accepted the demo's accepted cases, of which some are told again.
 */
export function waitingCases(seed: number, accepted: readonly CaseContent[]): WaitingSubmission[] {
  const drawn = demoWorld.drawCases(seed + 7, 60).map(({ content }) => ({ ...content, month: '2026-10' }));
  const cured = drawn.filter((content) => content.outcome === 'resolved' && content.causes.length > 0 && hasCure(content));
  const rest = drawn.filter((content) => !cured.includes(content));
  const take = () => cured.shift() as CaseContent;
  const plain = (content: CaseContent): WaitingSubmission => ({ content, proposals: [], newcomer: false });
  const clean = [...Array.from({ length: 8 }, take), ...rest.slice(0, 2)].map(plain);
  const saying = SAYS_WHO.map((words) => plain(withWords(take(), words)));
  const again = [accepted[40], accepted[900]].flatMap((content) => (content ? [plain(toldAgain(content))] : []));
  const contradictory = [
    { ...take(), outcome: 'unresolved' as const },
    wrongReading(cured),
    anotherCause(take(), take()),
  ].flatMap((content) => (content ? [plain(content)] : []));
  const worded = NEW_WORDS.map((proposal) => ({ ...plain(take()), proposals: [proposal] }));
  const fromNewcomer = Array.from({ length: 3 }, () => ({ ...plain(take()), newcomer: true }));
  return mixed([clean, saying, again, contradictory, worded, fromNewcomer]);
}

const hasCure = ({ steps }: CaseContent) => steps.some((step) => step.kind === 'fix' && step.result === 'cured');

const withWords = (content: CaseContent, words: string): CaseContent => ({ ...content, narrative: `${content.narrative}\n${words}`.trim() });

/** The same repair in nearly the same words, a month later. */
function toldAgain(content: CaseContent): CaseContent {
  const words = content.narrative.split(' ').filter((_, i) => i % 11 !== 7);
  return { ...content, month: '2026-09', narrative: words.join(' ') };
}

/** The first of them with a number beside a check, whose outcome is made another one than the check's rule gives. */
function wrongReading(from: CaseContent[]): CaseContent | null {
  for (const content of from) {
    for (const [position, step] of content.steps.entries()) {
      if (step.kind !== 'check' || step.value === null) continue;
      const check = vocabulary.checks.find((c) => c.slug === step.check);
      const meant = check && outcomeOfReading(check, { value: step.value, unit: step.unit });
      const other = check?.rule?.bands.find((band) => band.outcome !== meant)?.outcome;
      if (meant == null || other === undefined) continue;
      from.splice(from.indexOf(content), 1);
      return { ...content, steps: content.steps.map((s, i) => (i === position ? { ...step, outcome: other } : s)) };
    }
  }
  return null;
}

/** The cause of another case in place of its own: what cured it does nothing about that. */
const anotherCause = (content: CaseContent, other: CaseContent): CaseContent => ({
  ...content,
  causes: other.causes.map(({ cause }) => ({ cause, designators: [] })),
});

/** One of each kind after another, until none is left. */
function mixed<T>(groups: T[][]): T[] {
  const longest = Math.max(...groups.map((group) => group.length));
  return Array.from({ length: longest }, (_, i) => groups.flatMap((group) => group[i] ?? [])).flat();
}
