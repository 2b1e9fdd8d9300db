import type { DeviceCatalogue } from '../../schemas/device';
import type { ReadQuery } from '../../schemas/finding';
import type { Vocabulary } from '../../schemas/vocabulary';
import { absorbContext } from './absorb-context';
import { assembleReading } from './assemble-reading';
import { attachResults } from './attach-results';
import { attachStates } from './attach-states';
import { buildNodes } from './build-nodes';
import { deviceNames, findDevice } from './find-device';
import { joinContrasts } from './join-contrasts';
import { prepareTokens } from './prepare-tokens';
import { buildReaderContext } from './reader-context';
import { shareStates } from './share-states';
import { allSteps, type Steps } from '../steps/steps';
import { tokenise } from './tokenise';

/**
 * Longest stretch that is read, in characters and in words and marks: about a page. What lies beyond is
 * returned as one unread span, so that a pasted book costs no more than a page and still nothing is dropped.
 */
export const READ_LIMIT = { characters: 4000, words: 300 } as const;

/** Reads bench language; see `readQuery`. */
export type Reader = (text: string) => ReadQuery;

/**
 * Prepares a reader for a vocabulary and a catalogue. Building costs tens of milliseconds, reading a
 * usual query well under one: keep the reader.
 */
export function createReader(vocabulary: Vocabulary, catalogue: DeviceCatalogue): Reader {
  return allSteps(buildReader(vocabulary, catalogue));
}

/** The same in steps. */
export function* buildReader(vocabulary: Vocabulary, catalogue: DeviceCatalogue): Steps<Reader> {
  const context = yield* buildReaderContext(vocabulary);
  const names = deviceNames(catalogue);
  return (text) => {
    const cut = tokenise(text.slice(0, READ_LIMIT.characters), READ_LIMIT.words);
    const device = findDevice(cut.tokens, names);
    const words = device === null ? cut.tokens : cut.tokens.filter((_, at) => !device.tokens.has(at));
    const tokens = joinContrasts(prepareTokens(words, text, context.index.lexicon), context.index);
    const attached = attachStates(buildNodes(tokens, context.index), tokens, context);
    attached.mentions = absorbContext(attached, tokens, context);
    shareStates(attached.mentions, tokens, context);
    attachResults(attached, tokens, context);
    const read = assembleReading({ text, tokens, attached, context, rest: cut.end });
    return { ...read, device: device?.slug ?? null };
  };
}

/**
 * Turns bench language into findings: symptoms present or absent, checks with their outcomes, fixes with
 * their results, numbers judged by the checks' own rules, and the device mentioned.
 *
 * Spans index into `text` and never overlap. Words that mean something but could not be read come back
 * in `unread`; words with several meanings in `ambiguous`, with their choices. Never throws.
 * For more than one text use `createReader`, which builds its index once.
 */
export function readQuery(text: string, vocabulary: Vocabulary, catalogue: DeviceCatalogue): ReadQuery {
  return createReader(vocabulary, catalogue)(text);
}
