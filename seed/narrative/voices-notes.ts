import { pick } from '../random';
import { aside } from './asides';
import { expand, joined, sentence } from './expand';
import { tellCause, tellCheck, tellEnd, tellTrouble } from './sentences';
import { causeNote, cured, filled, maybe, noted, some, worthTelling, type Voice } from './voice';
import { attemptDone, checkNoun, fixDone, outcomeWords, resultWords } from './words';

/** A line, no more. */
export const telegram: Voice = (story) => {
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
export const oneLiner: Voice = (story) => {
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
export const list: Voice = (story) => {
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
export const numbered: Voice = (story) => {
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

/** Sober, whole sentences, numbers first. */
export const report: Voice = (story) => {
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
export const diary: Voice = (story) => {
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

/** Question and answer with oneself. */
export const dialogue: Voice = (story) => {
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
