import { pick, pickWeighted, shuffled } from '../random';
import { aside } from './asides';
import { expand, joined, sentence } from './expand';
import { tellCause, tellCheck, tellCure, tellEnd, tellFailed, tellFine, tellTrouble } from './sentences';
import type { Story } from './story';
import { attemptDone, causeName, checkNoun, fixDone, outcomeWords, resultWords, symptomNote } from './words';

/** One way of writing; returns the text before the typist's habits. */
export type Voice = (story: Story) => string;

const some = <T>(story: Story, items: readonly T[], share: number): T[] => items.filter(() => story.random() < share);
const cured = (story: Story): string => (story.cure ? tellCure(story, story.cure) : '');
const filled = (parts: readonly string[], between: string): string => parts.filter((part) => part !== '').join(between);
/** The steps worth telling where there are many: what was tried, what was off, and some of the rest, in their order. */
const worthTelling = ({ content, off, random }: Story): Story['content']['steps'] => {
  const many = content.steps.length > 7;
  return content.steps.filter(
    (step) =>
      !many || (step.kind === 'fix' ? step.result === 'cured' || random() < 0.8 : random() < (off.includes(step) ? 0.85 : 0.3)),
  );
};
const noted = ({ random, present, lexicon }: Story): string[] => present.map((slug) => symptomNote(random, slug, lexicon));
const maybe = (story: Story, chance: number, text: () => string): string => (story.random() < chance ? text() : '');
const causeNote = ({ random, cause, content }: Story): string => {
  if (!cause) return pick(random, ['not found', 'unknown', '?', 'open']);
  const at = content.causes[0]?.designators.join(', ') ?? '';
  return `${causeName(random, cause)}${at === '' ? '' : ` ${at}`}${content.proof === 'suspected' ? ' (?)' : ''}`;
};

/** A line, no more. */
const telegram: Voice = (story) => {
  const { random, lexicon, cure } = story;
  const mark = pick(random, [' - ', ' / ', '; ', '. ', ' -> ', ', ', ' … ']);
  const found = some(story, story.off, 0.5)
    .slice(0, 2)
    .map((step) => `${checkNoun(random, lexicon.check(step.check))} ${outcomeWords(random, step, lexicon.check(step.check))}`);
  const done = cure ? attemptDone(random, cure, lexicon) : pick(random, ['no fix', 'left it', 'stopped', '']);
  const parts = [
    joined(noted(story), random() < 0.5 ? '+' : 'and'),
    ...found,
    causeNote(story),
    done,
    maybe(story, 0.5, () => (cure ? resultWords(random, 'cured') : '')),
  ];
  return filled(random() < 0.25 ? [...parts].reverse() : parts, mark);
};

/** The fix and nothing else. */
const oneLiner: Voice = (story) => {
  const { random, cure, lexicon, present } = story;
  const slots = {
    s: noted(story)[0] ?? 'fault',
    c: causeNote(story),
    f: cure ? attemptDone(random, cure, lexicon) : 'stopped looking',
  };
  if (!cure) return expand(random, '{<s>, cause <c>.|Was: <s>. Is: <c>.|"<s>" - <c>, nothing done.|<s>. <c>}', slots);
  return expand(
    random,
    `{<s>, <f>, done.|<c>, <f>.|Just <f>${present.length > 1 ? ' and everything came good' : ''}.|<s> = <c> here.|If you have <s>: here it was <c>.|<f>. {That was all.|Five minutes.|Fixed.|}|Had <s>, <c>, <f>}`,
    slots,
  );
};

/** Marks and dashes. */
const list: Voice = (story) => {
  const { random, lexicon } = story;
  const bullet = pick(random, ['- ', '* ', '> ', '', '• ', '-- ']);
  const head = (a: readonly string[]) => pick(random, a);
  const lines = [
    `${head(['Fault', 'Symptoms', 'What it did', 'Complaint', 'Shows'])}: ${joined(noted(story))}`,
    ...some(story, story.checks, 0.75).map(
      (step) =>
        `${bullet}${checkNoun(random, lexicon.check(step.check))}${pick(random, [': ', ' = ', ' - ', ', '])}${outcomeWords(random, step, lexicon.check(step.check))}`,
    ),
    ...story.failed.map(
      (step) =>
        `${bullet}${attemptDone(random, step, lexicon)}${pick(random, [' -> ', ': ', ', ', ' - '])}${resultWords(random, step.result)}`,
    ),
    story.cure
      ? `${bullet}${attemptDone(random, story.cure, lexicon)}${pick(random, [' -> ', ': ', ', '])}${resultWords(random, 'cured')}`
      : '',
    `${head(['Cause', 'Verdict', 'It was', 'Result', 'Found'])}: ${causeNote(story)}`,
    maybe(story, 0.5, () => tellEnd(story)),
  ];
  return filled(lines, '\n');
};

/** Steps with numbers, in the order in which they happened. */
const numbered: Voice = (story) => {
  const { random, lexicon } = story;
  const style = pick(random, ['1. ', '1) ', '(1) ']);
  const steps = worthTelling(story).map((step) =>
    step.kind === 'check' ? tellCheck(story, step) : `${attemptDone(random, step, lexicon)}, ${resultWords(random, step.result)}`,
  );
  const lines = steps.map((text, index) => `${style.replace('1', String(index + 1))}${random() < 0.7 ? sentence(text) : text}`);
  return filled(
    [maybe(story, 0.7, () => tellTrouble(story)), ...lines, tellCause(story), maybe(story, 0.4, () => tellEnd(story))],
    '\n',
  );
};

/** From beginning to end, with time to spare. */
const tale: Voice = (story) => {
  const fine = some(story, story.fine, 0.6);
  const opening = filled([tellTrouble(story), maybe(story, 0.35, () => aside(story))], ' ');
  const middle = filled(
    [
      tellFine(story, fine),
      ...some(story, story.off, 0.9).map((step) => `${sentence(tellCheck(story, step))}.`),
      ...story.failed.map((step) => tellFailed(story, step)),
    ],
    ' ',
  );
  const ending = filled([cured(story), tellCause(story), tellEnd(story), maybe(story, 0.6, () => aside(story))], ' ');
  return filled([opening, middle, ending], story.random() < 0.7 ? '\n\n' : ' ');
};

/** The failures first. */
const confession: Voice = (story) => {
  const wasted = story.failed.map((step) => tellFailed(story, step));
  const lead = expand(
    story.random,
    '{What did not help first.|Things I did for nothing:|A list of my mistakes.|Let me begin with what was wrong with my thinking.|Do not do what I did.|}',
  );
  return filled(
    [
      wasted.length > 0 ? lead : '',
      ...wasted,
      tellTrouble(story),
      ...some(story, story.off, 0.6).map((step) => `${sentence(tellCheck(story, step))}.`),
      cured(story),
      tellCause(story),
    ],
    ' ',
  );
};

/** The answer, then why. */
const backwards: Voice = (story) =>
  filled(
    [
      tellCause(story),
      cured(story),
      tellTrouble(story),
      ...some(story, shuffled(story.random, story.checks), 0.4).map((step) => `${sentence(tellCheck(story, step))}.`),
      maybe(story, 0.5, () => tellEnd(story)),
      maybe(story, 0.3, () => aside(story)),
    ],
    ' ',
  );

/** Advice to the next one. */
const adviser: Voice = (story) => {
  const { random, lexicon, cure, cause } = story;
  const advice =
    cause && cure
      ? expand(
          random,
          '{If you see "<s>", look at the <r> before anything else.|Before you order parts for "<s>": check the <r>.|Lesson from this one: the <r> can do that.|"<s>" does not always mean a dead chip; here it was down to the <r>.|Tip: "<s>"? The <r>.|Keep the <r> in mind when you have "<s>".}',
          { s: noted(story)[0] ?? 'this', r: lexicon.role(cause.role) },
        )
      : expand(
          random,
          '{No happy end here, so no advice either.|Careful with these.|Do not expect a quick win on one like this.|I would like to give advice, but I have none.}',
        );
  return filled(
    [
      sentence(advice),
      ...shuffled(random, [
        tellTrouble(story),
        ...some(story, story.off, 0.5).map((step) => `${sentence(tellCheck(story, step))}.`),
      ]),
      cured(story),
      maybe(story, 0.4, () => tellEnd(story)),
    ],
    ' ',
  );
};

/** Sober, whole sentences, numbers first. */
const report: Voice = (story) => {
  const { random, lexicon } = story;
  const measured = story.checks.map((step) =>
    expand(random, '{<n> was found to be <o>|<n>: <o>|the result for <n> was <o>|<n> gave <o>}', {
      n: checkNoun(random, lexicon.check(step.check)),
      o: outcomeWords(random, step, lexicon.check(step.check)),
    }),
  );
  const work = [...story.failed, ...(story.cure ? [story.cure] : [])].map((step) =>
    expand(random, '{The following was done: <f>. Outcome: <r>.|Work done: <f> (<r>).|<F>; <r>.}', {
      f: attemptDone(random, step, lexicon),
      F: sentence(attemptDone(random, step, lexicon)),
      r: resultWords(random, step.result),
    }),
  );
  const headed = random() < 0.4;
  return filled(
    [
      headed ? `Fault: ${joined(noted(story))}.` : tellTrouble(story),
      measured.length > 0 ? `${headed ? 'Measurements: ' : ''}${sentence(measured.join(pick(random, ['; ', ', '])))}.` : '',
      work.join(' '),
      `${tellCause(story)} ${tellEnd(story)}`.trim(),
    ],
    random() < 0.6 ? '\n' : ' ',
  );
};

/** Evening after evening. */
const diary: Voice = (story) => {
  const { random, lexicon } = story;
  const marks = pick(random, [
    ['First evening:', 'Second evening:', 'Third evening:', 'Later still:', 'Last attempt:'],
    ['Day 1.', 'Day 2.', 'Day 3.', 'Day 4.', 'Day 5.'],
    ['Saturday morning,', 'after lunch,', 'Sunday,', 'a week later,', 'much later,'],
    ['Start:', 'Then:', 'After tea:', 'Next:', 'At last:'],
    ['Round one.', 'Round two.', 'Round three.', 'Round four.', 'Round five.'],
  ]);
  const told = worthTelling(story).map((step) =>
    step.kind === 'check' ? tellCheck(story, step) : `${attemptDone(random, step, lexicon)}, ${resultWords(random, step.result)}`,
  );
  const size = Math.max(2, Math.ceil(told.length / marks.length));
  const days = marks.map((mark, index) => {
    const part = told.slice(index * size, (index + 1) * size);
    return part.length === 0 ? '' : `${mark} ${part.join(pick(random, ['. ', ', ', '; ', ', then ']))}.`;
  });
  return filled(
    [maybe(story, 0.8, () => tellTrouble(story)), ...days, tellCause(story), maybe(story, 0.5, () => aside(story))],
    random() < 0.5 ? '\n' : ' ',
  );
};

/** Somebody's first repair. */
const beginner: Voice = (story) => {
  const { random } = story;
  const hello = expand(
    random,
    '{First time I open one of these, be kind.|I am no expert at all.|Total beginner here.|Please correct me if this is nonsense.|Not sure I use the right words.|My first repair!|I only have a multimeter and some courage.|}',
  );
  const doubts = () =>
    expand(
      random,
      '{(hope I measured that right)|(I think)|which is normal, as far as I understand|no idea if that is how you do it|}',
    );
  const checks = some(story, story.checks, 0.6)
    .map((step) => `${sentence(tellCheck(story, step))} ${random() < 0.3 ? doubts() : ''}`.trim())
    .map((text) => `${text}.`);
  return filled(
    [
      hello,
      tellTrouble(story),
      ...checks,
      ...story.failed.map((step) => tellFailed(story, step)),
      cured(story),
      tellCause(story),
      expand(random, '{So happy.|Learned a lot.|Thanks for all the write-ups here.|Could not believe it.|}'),
    ],
    ' ',
  );
};

/** Question and answer with oneself. */
const dialogue: Voice = (story) => {
  const { random, lexicon } = story;
  const parts = [
    `${pick(random, ['What was wrong?', 'Problem?', 'The fault?'])} ${sentence(joined(noted(story)))}.`,
    ...some(story, story.checks, 0.4)
      .slice(0, 4)
      .map(
        (step) =>
          `${sentence(checkNoun(random, lexicon.check(step.check)))}? ${sentence(outcomeWords(random, step, lexicon.check(step.check)))}.`,
      ),
    ...story.failed.map(
      (step) =>
        `${sentence(fixDone(random, lexicon.fix(step.fixes[0]?.fix ?? '')))}? ${sentence(resultWords(random, step.result))}.`,
    ),
    `${pick(random, ['And the cause?', 'What was it?', 'Answer:', 'So?'])} ${tellCause(story)}`,
    cured(story),
  ];
  return filled(parts, random() < 0.4 ? '\n' : ' ');
};

/** Short and a little cross. */
const grumbler: Voice = (story) => {
  const grumble = () =>
    expand(
      story.random,
      '{Who builds something like this.|Of course.|Naturally the screws were rusted.|Typical.|I have better things to do.|They do not make them like this any more, luckily.|Whoever glued that in should be made to take it out.|Sigh.|Again.|You could not make it up.}',
    );
  return filled(
    shuffled(story.random, [
      tellTrouble(story),
      grumble(),
      ...story.failed.slice(0, 2).map((step) => tellFailed(story, step)),
    ]).concat([
      ...some(story, story.off, 0.4).map((step) => `${sentence(tellCheck(story, step))}.`),
      tellCause(story),
      cured(story),
      maybe(story, 0.6, grumble),
    ]),
    ' ',
  );
};

/** Two or three plain sentences. */
const brief: Voice = (story) => {
  const parts = [
    tellTrouble(story),
    ...some(story, story.off, 0.35)
      .slice(0, 2)
      .map((step) => `${sentence(tellCheck(story, step))}.`),
    story.random() < 0.6 ? tellCause(story) : '',
    story.cure ? cured(story) : tellEnd(story),
  ];
  return filled(parts, ' ');
};

const VOICES: readonly (readonly [Voice, number])[] = [
  [telegram, 13],
  [oneLiner, 7],
  [list, 10],
  [numbered, 5],
  [tale, 13],
  [confession, 6],
  [backwards, 8],
  [adviser, 7],
  [report, 8],
  [diary, 6],
  [beginner, 5],
  [dialogue, 3],
  [grumbler, 5],
  [brief, 15],
];

/** Draws a voice. */
export function drawVoice(story: Story): Voice {
  return pickWeighted(story.random, VOICES);
}
