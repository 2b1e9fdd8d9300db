import type { Finding, ReadQuery } from '../../schemas/finding';
import type { Attached } from './attach-states';
import { isContent, spanOf, unreadRuns, type Claims, type Span } from './claim-spans';
import { labelOf } from './labels';
import type { Mention } from './mention';
import { readLoneWord } from './read-lone-word';
import type { ReaderContext } from './reader-context';
import { resolveMention, type Resolution } from './resolve-mention';
import type { Token } from './token';

export type Sentence = {
  text: string;
  tokens: readonly Token[];
  attached: Attached;
  context: ReaderContext;
  /** Where reading stopped; what lies beyond is unread. */
  rest: number;
};

type Read = { resolution: NonNullable<Resolution>; from: number; to: number; own: number[] };

/** Puts findings, ambiguous and unread spans together, in the order of the text. */
export function assembleReading(sentence: Sentence): Omit<ReadQuery, 'device'> {
  const { tokens, context } = sentence;
  const reads = sentence.attached.mentions.flatMap((m) => readOf(m, tokens, context));
  const claims: Claims = tokens.map(() => null);
  for (const [owner, read] of reads.entries()) claim(claims, read, owner);
  readLoneWords(sentence, reads, claims);
  const result: Omit<ReadQuery, 'device'> = { findings: [], ambiguous: [], unread: [] };
  const spans: Span[] = [];
  const said = new Map<string, Finding>();
  for (const [owner, read] of reads.entries()) {
    const span = spanOf(read, read.own, owner, claims, tokens);
    spans.push(span);
    place(sentence, result, read.resolution, span, said);
  }
  for (const run of unreadRuns(tokens, claims, spans))
    result.unread.push(
      piece(sentence.text, { start: (tokens[run.from] as Token).start, end: (tokens[run.to - 1] as Token).end }),
    );
  addRest(sentence, result);
  for (const list of [result.findings, result.ambiguous, result.unread]) list.sort((a, b) => a.start - b.start);
  return result;
}

function readOf(mention: Mention, tokens: readonly Token[], context: ReaderContext): Read[] {
  const resolution = resolveMention(mention, tokens, context);
  if (resolution === null) return [];
  const own = [...new Set([...mention.tokens, ...mention.resultTokens])];
  return [{ resolution, from: mention.piece.from, to: mention.piece.to, own }];
}

function claim(claims: Claims, read: Read, owner: number): void {
  for (const at of read.own) claims[at] ??= owner;
  for (let at = read.from; at < read.to; at += 1) claims[at] = owner;
}

/** Single words that nothing else explains, but that belong to one symptom only ("snowy"). */
function readLoneWords(sentence: Sentence, reads: Read[], claims: Claims): void {
  for (const [at, token] of sentence.tokens.entries()) {
    if (claims[at] !== null || !isContent(token) || !token.known) continue;
    const denied = at > 0 && claims[at - 1] === null && (sentence.tokens[at - 1] as Token).role === 'negator';
    const resolution = readLoneWord(token, denied, sentence.context);
    if (resolution === null) continue;
    const read: Read = { resolution, from: at, to: at + 1, own: denied ? [at, at - 1] : [at] };
    claim(claims, read, reads.length);
    reads.push(read);
  }
}

/** The same finding said twice is one finding; a contradiction is asked about. */
function place(
  sentence: Sentence,
  result: Omit<ReadQuery, 'device'>,
  resolution: NonNullable<Resolution>,
  span: Span,
  said: Map<string, Finding>,
): void {
  const withLabel = (f: Finding) => ({ ...f, label: labelOf(f, sentence.context) });
  if (resolution.kind === 'ambiguous') {
    result.ambiguous.push({ ...piece(sentence.text, span), choices: resolution.choices.map(withLabel) });
    return;
  }
  const finding = resolution.finding;
  const key = `${finding.kind} ${finding.id}`;
  const before = said.get(key);
  if (before === undefined) {
    said.set(key, finding);
    result.findings.push({ ...withLabel(finding), ...piece(sentence.text, span) });
  } else if (before.value !== finding.value) {
    result.ambiguous.push({ ...piece(sentence.text, span), choices: [withLabel(finding), withLabel(before)] });
  }
}

function piece(text: string, span: Span): { text: string; start: number; end: number } {
  return { text: text.slice(span.start, span.end), start: span.start, end: span.end };
}

function addRest(sentence: Sentence, result: Omit<ReadQuery, 'device'>): void {
  const beyond = sentence.text.slice(sentence.rest);
  const lead = beyond.length - beyond.trimStart().length;
  const end = sentence.rest + beyond.trimEnd().length;
  const start = sentence.rest + lead;
  if (end > start) result.unread.push(piece(sentence.text, { start, end }));
}
