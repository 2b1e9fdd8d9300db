import { pick } from '../random';
import { tellCure } from './sentences';
import type { Story } from './story';
import { causeName, symptomNote } from './words';

/** One way of writing; returns the text before the typist's habits. */
export type Voice = (story: Story) => string;

/** Each item with the given probability, in order. */
export const some = <T>(story: Story, items: readonly T[], share: number): T[] => items.filter(() => story.random() < share);
/** What cured it, or nothing. */
export const cured = (story: Story): string => (story.cure ? tellCure(story, story.cure) : '');
/** The parts that are not empty, joined. */
export const filled = (parts: readonly string[], between: string): string => parts.filter((part) => part !== '').join(between);
/** The steps worth telling where there are many: what was tried, what was off, and some of the rest, in their order. */
export const worthTelling = ({ content, off, random }: Story): Story['content']['steps'] => {
  const many = content.steps.length > 7;
  return content.steps.filter(
    (step) =>
      !many || (step.kind === 'fix' ? step.result === 'cured' || random() < 0.8 : random() < (off.includes(step) ? 0.85 : 0.3)),
  );
};
/** The symptoms as notes. */
export const noted = ({ random, present, lexicon }: Story): string[] => present.map((slug) => symptomNote(random, slug, lexicon));
/** The text, with the given probability. */
export const maybe = (story: Story, chance: number, text: () => string): string => (story.random() < chance ? text() : '');
/** The cause as a note, with its designators. */
export const causeNote = ({ random, cause, content }: Story): string => {
  if (!cause) return pick(random, ['not found', 'unknown', '?', 'open']);
  const at = content.causes[0]?.designators.join(', ') ?? '';
  return `${causeName(random, cause)}${at === '' ? '' : ` ${at}`}${content.proof === 'suspected' ? ' (?)' : ''}`;
};
