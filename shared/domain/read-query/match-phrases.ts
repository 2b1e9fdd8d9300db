import type { Phrase, Target } from './phrase';
import type { PhraseIndex } from './phrase-index';
import { singleScore } from './single-score';
import { stateClassesOf } from './state-words';
import type { Token } from './token';

/** A phrase found in the words: which tokens stand for its terms, and which states stand among them. */
export type PhraseMatch = {
  /** Token range, `to` exclusive. */
  from: number;
  to: number;
  score: number;
  targets: readonly { target: Target; quality: number; sameWords: boolean }[];
  /** Tokens inside the range that say a state, a number or "not" and are not part of the phrase. */
  inner: readonly number[];
  missing: number;
};

type Hit = { at: number; slot: number; weight: number };

const WORDS_BETWEEN = 5;
/** Score of a telling word, of a small one, for each further telling word, and what each flaw costs. */
const SCORE = {
  telling: 1,
  small: 0.25,
  together: 0.5,
  gap: 0.04,
  stranger: 0.6,
  inner: 0.3,
  disorder: 0.1,
  missing: 1.3,
  dropped: 0.55,
  optional: 0.15,
  unsaid: 0.18,
  no: 0.6,
  faint: 0.1,
} as const;

/** Finds every phrase of the index in one clause (tokens `from` to `to`, exclusive), in any word order. */
export function matchPhrases(tokens: readonly Token[], from: number, to: number, index: PhraseIndex): PhraseMatch[] {
  const hits = collectHits(tokens, from, to, index);
  const matches: PhraseMatch[] = [];
  for (const [phrase, found] of hits) {
    for (const [first, start] of found.entries()) {
      if (start.slot < 0) continue;
      const match = windowFrom(tokens, phrase, found, first);
      if (match !== null) matches.push(match);
    }
  }
  return matches;
}

/** Bit for a phrase's "no"; the slots have the bits below. */
const NO_BIT = 1 << 30;

/**
 * Where the terms of each phrase stand. Two passes, so that phrases of which too little is said cost
 * next to nothing: first only which terms occur, then the places of those that occur enough.
 */
function collectHits(tokens: readonly Token[], from: number, to: number, index: PhraseIndex): Map<Phrase, Hit[]> {
  const seen = new Map<number, number>();
  let negated = false;
  for (let at = from; at < to; at += 1) {
    const token = tokens[at] as Token;
    negated ||= token.role === 'negator';
    for (const { term } of token.terms) {
      for (const { phrase, slot } of index.postings.get(term) ?? [])
        if (slot >= 0) seen.set(phrase.id, (seen.get(phrase.id) ?? 0) | (1 << slot));
    }
  }
  const hits = new Map<Phrase, Hit[]>();
  for (let at = from; at < to; at += 1) {
    for (const { term, weight } of (tokens[at] as Token).terms) {
      for (const { phrase, slot } of index.postings.get(term) ?? []) {
        if (!couldMatch(phrase, seen.get(phrase.id) ?? 0, negated)) continue;
        const known = hits.get(phrase);
        if (known === undefined) hits.set(phrase, [{ at, slot, weight }]);
        else known.push({ at, slot, weight });
      }
    }
  }
  if (negated) addNegators(tokens, from, to, hits);
  return hits;
}

/** "No" is in so many phrases that it is looked up only for those that something else speaks for. */
function addNegators(tokens: readonly Token[], from: number, to: number, hits: Map<Phrase, Hit[]>): void {
  const negators = Array.from({ length: to - from }, (_, i) => from + i).filter((at) => (tokens[at] as Token).role === 'negator');
  for (const [phrase, found] of hits) {
    const slot = phrase.noSlot;
    if (slot < 0) continue;
    for (const at of negators) {
      const weight = (tokens[at] as Token).terms.find((t) => t.term === phrase.required[slot])?.weight ?? 0;
      if (weight > 0) found.push({ at, slot, weight });
    }
    found.sort((a, b) => a.at - b.at);
  }
}

function couldMatch(phrase: Phrase, seen: number, negated: boolean): boolean {
  if (phrase.noSlot >= 0 && !negated) return false;
  const need = phrase.required.length - allowedMissing(phrase);
  const said = seen | phrase.droppable;
  return seen !== 0 && bitCount(phrase.noSlot >= 0 ? said | NO_BIT : said) >= need;
}

/** Of four terms and more one may be left unsaid. */
function allowedMissing(phrase: Phrase): number {
  return phrase.required.length >= 4 ? 1 : 0;
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

/** The shortest window that begins at `start` and holds the phrase's terms, or null. */
function windowFrom(tokens: readonly Token[], phrase: Phrase, hits: readonly Hit[], first: number): PhraseMatch | null {
  const start = hits[first] as Hit;
  const chosen = new Map<number, Hit>([[start.slot, start]]);
  const used = new Set([start.at]);
  let last = start.at;
  for (let next = first; next < hits.length && chosen.size < phrase.required.length; next += 1) {
    const hit = hits[next] as Hit;
    if (hit.at - last - 1 > WORDS_BETWEEN) break;
    if (hit.slot < 0 || chosen.has(hit.slot) || used.has(hit.at)) continue;
    chosen.set(hit.slot, hit);
    used.add(hit.at);
    last = hit.at;
  }
  const dropped = phrase.required.filter((_, slot) => (phrase.droppable & (1 << slot)) !== 0 && !chosen.has(slot)).length;
  const missing = phrase.required.length - chosen.size - dropped;
  if (missing > allowedMissing(phrase) || (missing > 0 && !chosenNegator(phrase, chosen))) return null;
  const optional =
    phrase.optional.length === 0
      ? []
      : hits.filter((h) => h.slot < 0 && h.at >= start.at - 1 && h.at <= last + 1 && !used.has(h.at));
  return scored(tokens, phrase, { chosen: [...chosen.values()], optional, used, missing, dropped });
}

/** A phrase's "no" may never be the term left unsaid. */
function chosenNegator(phrase: Phrase, chosen: ReadonlyMap<number, Hit>): boolean {
  return phrase.noSlot < 0 || chosen.has(phrase.noSlot);
}

type Window = { chosen: readonly Hit[]; optional: readonly Hit[]; used: Set<number>; missing: number; dropped: number };

function scored(tokens: readonly Token[], phrase: Phrase, window: Window): PhraseMatch | null {
  for (const hit of window.optional) window.used.add(hit.at);
  const places = [...window.used];
  const from = Math.min(...places);
  const to = Math.max(...places) + 1;
  const gap = judgeGap(tokens, phrase, from, to, window.used);
  if (gap === null) return null;
  let score = -gap.cost - SCORE.missing * window.missing - SCORE.dropped * window.dropped;
  let telling = 0;
  for (const hit of window.chosen) {
    const role = (tokens[hit.at] as Token).role;
    if (role === 'negator') {
      score += hit.weight * SCORE.no;
      continue;
    }
    const small = role === 'filler' || role === 'weak';
    score += hit.weight * (small ? SCORE.small : SCORE.telling);
    telling += small ? 0.3 : 1;
  }
  score +=
    SCORE.together * Math.max(0, telling - 1) +
    SCORE.optional * window.optional.length -
    SCORE.unsaid * (phrase.optional.length - window.optional.length);
  if (!inOrder(window.chosen)) score -= SCORE.disorder;
  if (telling < 0.9 && !window.chosen.some((h) => (tokens[h.at] as Token).role === 'negator')) score *= SCORE.faint;
  const written = window.chosen.map((h) => tokens[h.at] as Token).filter((t) => t.role !== 'negator');
  const targets = phrase.targets
    .filter((t) => gap.inner.length === 0 || takesInner(t.target, tokens, gap.inner))
    .filter((t) => window.dropped === 0 || t.target.kind === 'check')
    .filter((t) => t.target.kind !== 'fix' || !gap.later)
    .map(({ target, quality, words }) => ({
      target,
      quality,
      sameWords: window.dropped === 0 && written.every((t) => words.has(t.word)),
    }));
  return targets.length === 0 ? null : { from, to, score, targets, inner: gap.inner, missing: window.missing };
}

function inOrder(hits: readonly Hit[]): boolean {
  const sorted = [...hits].sort((a, b) => a.slot - b.slot);
  return sorted.every((h, i) => i === 0 || h.at > (sorted[i - 1] as Hit).at);
}

/** Words that part what was done from what was seen: no fix is named across them ("no sound after replacing the amp"). */
const LATER_WORDS: ReadonlySet<string> = new Set(['after', 'despite', 'following', 'when', 'once']);

/** What stands between a phrase's words: small words pass, states are kept for later, telling words forbid. */
function judgeGap(
  tokens: readonly Token[],
  phrase: Phrase,
  from: number,
  to: number,
  used: ReadonlySet<number>,
): { cost: number; inner: number[]; later: boolean } | null {
  const inner: number[] = [];
  let cost = 0;
  let strangers = 0;
  let later = false;
  for (let at = from; at < to; at += 1) {
    if (used.has(at)) continue;
    const token = tokens[at] as Token;
    later ||= LATER_WORDS.has(token.word);
    if (token.role === 'joiner') {
      if (!phrase.joined || token.word === ',') return null;
    } else if (token.role === 'break') return null;
    else if (token.role === 'negator' || token.role === 'number' || stateClassesOf(token.word).length > 0) {
      inner.push(at);
      cost += SCORE.inner - singleScore(token);
    } else if (token.role === 'filler' || token.role === 'weak') cost += SCORE.gap;
    else if (token.known || strangers > 0) return null;
    else {
      strangers += 1;
      cost += SCORE.stranger;
    }
  }
  return { cost, inner, later };
}

/** A check can be told its state in the middle of its name, a fix may describe the old part; a symptom only bears "not". */
function takesInner(target: Target, tokens: readonly Token[], inner: readonly number[]): boolean {
  if (target.kind === 'fix') return inner.every((at) => (tokens[at] as Token).role !== 'negator');
  if (target.kind === 'check' || target.kind === 'role' || target.kind === 'subject' || target.kind === 'told') return true;
  return target.kind === 'symptom' && inner.every((at) => (tokens[at] as Token).role === 'negator');
}
