import { type CaseContent, NARRATIVE_MAX_LENGTH } from '../../shared/schemas/case';
import type { DeviceCategory } from '../../shared/schemas/terms';
import type { Random } from '../world';
import { layOut } from './story';
import { drawTypist } from './typing';
import { drawVoice } from './draw-voice';
import type { Lexicon } from './words';

export type Telling = { readonly random: Random; readonly lexicon: Lexicon; readonly category: DeviceCategory };

/**
 * Tells a case as one contributor might, from a line to several paragraphs. What it says of the case is what the case
 * holds, though not all of it; no names, places, dates or brands.
 */
export function narrate(content: CaseContent, { random, lexicon, category }: Telling): string {
  const story = layOut(content, category, { random, lexicon });
  const told = drawTypist(random)(drawVoice(story)(story));
  return tidy(told).slice(0, NARRATIVE_MAX_LENGTH);
}

/** Puts right what joining leaves behind: doubled stops, blanks before stops. */
function tidy(text: string): string {
  return text
    .replace(/ +([,.;:!?])/g, '$1')
    .replace(/([!?])\./g, '$1')
    .replace(/(?<!\.)\.{2}(?!\.)/g, '.')
    .replace(/,{2,}/g, ',')
    .replace(/,\./g, '.')
    .replace(/[ \t]{2,}/g, ' ')
    .replace(/ \n/g, '\n')
    .trim();
}
