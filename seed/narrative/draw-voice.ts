import { pickWeighted } from '../random';
import type { Story } from './story';
import type { Voice } from './voice';
import { diary, dialogue, list, numbered, oneLiner, report, telegram } from './voices-notes';
import { adviser, backwards, beginner, brief, confession, grumbler, tale } from './voices-prose';

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
