import { shuffled } from '../random';
import { aside } from './asides';
import { expand, sentence } from './expand';
import { tellCause, tellCheck, tellEnd, tellFailed, tellFine, tellTrouble } from './sentences';
import { cured, filled, maybe, noted, some, type Voice } from './voice';

/** From beginning to end, with time to spare. */
export const tale: Voice = (story) => {
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
export const confession: Voice = (story) => {
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
export const backwards: Voice = (story) =>
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
export const adviser: Voice = (story) => {
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

/** Somebody's first repair. */
export const beginner: Voice = (story) => {
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

/** Short and a little cross. */
export const grumbler: Voice = (story) => {
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
export const brief: Voice = (story) => {
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
