import { oppositeClasses, stateClassesOf, type StateClass } from './state-words';
import type { Target } from './phrase';
import type { PhraseMatch } from './match-phrases';
import { singleScore } from './single-score';
import type { Token } from './token';

/** A stretch of tokens with what it may name, best first; `inner` states follow it as pieces of their own. */
export type Piece = {
  from: number;
  to: number;
  candidates: { target: Target; score: number }[];
  classes: ReadonlySet<StateClass>;
  inner: readonly number[];
};

/** Phrases on the same words count as equals within this distance. */
const NEAR = 0.45;
/** What the very words of an entry add over other inflections of them. */
const SAME_WORDS = 0.15;

/**
 * Chooses the non-overlapping matches that together explain the clause best (weighted interval
 * scheduling) and returns them as pieces in order. Tokens that no match covers are left out.
 */
export function coverClause(tokens: readonly Token[], from: number, to: number, matches: readonly PhraseMatch[]): Piece[] {
  const byRange = groupByRange(matches);
  const ending = new Map<number, RangeGroup[]>();
  for (const group of byRange) ending.set(group.to, [...(ending.get(group.to) ?? []), group]);
  const best = new Float64Array(to - from + 1);
  const taken: (RangeGroup | null)[] = [null];
  for (let end = from + 1; end <= to; end += 1) {
    const at = end - from;
    best[at] = (best[at - 1] as number) + singleScore(tokens[end - 1] as Token);
    taken[at] = null;
    for (const group of ending.get(end) ?? []) {
      const score = (best[group.from - from] as number) + group.score;
      if (score > (best[at] as number)) {
        best[at] = score;
        taken[at] = group;
      }
    }
  }
  return walkBack(tokens, from, to, taken);
}

type RangeGroup = { from: number; to: number; score: number; matches: PhraseMatch[] };

function groupByRange(matches: readonly PhraseMatch[]): RangeGroup[] {
  const groups = new Map<number, RangeGroup>();
  for (const match of matches) {
    const key = match.from * 100_000 + match.to;
    const group = groups.get(key);
    const score =
      match.score *
      topQuality(match) *
      (namesThing(match) ? 1 : match.to - match.from > 1 ? STATE_SHARE.several : STATE_SHARE.one);
    if (group === undefined) groups.set(key, { from: match.from, to: match.to, score, matches: [match] });
    else {
      group.matches.push(match);
      group.score = Math.max(group.score, score);
    }
  }
  return [...groups.values()];
}

/** Classes of the words of a piece; a "not" among them turns them round. */
function classesOfTokens(tokens: readonly Token[]): readonly StateClass[] {
  const named = tokens.flatMap((t) => stateClassesOf(t.word));
  return tokens.some((t) => t.role === 'negator') ? oppositeClasses(named) : named;
}

/** A state alone explains less than a thing with or without one. */
const STATE_SHARE = { one: 0.75, several: 0.85 } as const;

function namesThing(match: PhraseMatch): boolean {
  return match.targets.some(({ target }) => target.kind !== 'outcome' && target.kind !== 'state');
}

function topQuality(match: PhraseMatch): number {
  return Math.max(...match.targets.map((t) => t.quality));
}

function walkBack(tokens: readonly Token[], from: number, to: number, taken: readonly (RangeGroup | null)[]): Piece[] {
  const pieces: Piece[] = [];
  let end = to;
  while (end > from) {
    const group = taken[end - from];
    if (group !== null && group !== undefined) {
      pieces.push(pieceOf(tokens, group));
      end = group.from;
      continue;
    }
    const token = tokens[end - 1] as Token;
    if (singleScore(token) > 0)
      pieces.push({ from: end - 1, to: end, candidates: [], classes: new Set(stateClassesOf(token.word)), inner: [] });
    end -= 1;
  }
  return pieces.reverse();
}

function pieceOf(tokens: readonly Token[], group: RangeGroup): Piece {
  const candidates: Piece['candidates'] = [];
  const classes = new Set<StateClass>();
  let inner: readonly number[] = [];
  const best = Math.max(...group.matches.map((m) => m.score * topQuality(m)));
  for (const match of [...group.matches].sort((a, b) => b.score - a.score)) {
    if (match.score * topQuality(match) < best - NEAR) continue;
    if (candidates.length === 0) inner = match.inner;
    for (const { target, quality, sameWords } of match.targets) {
      if (target.kind === 'state') for (const c of target.classes) classes.add(c);
      candidates.push({ target, score: match.score * quality + (sameWords ? SAME_WORDS : 0) });
    }
  }
  const states = candidates.every((c) => c.target.kind === 'outcome' || c.target.kind === 'state' || c.target.kind === 'result');
  if (states || group.to - group.from === 1) for (const c of classesOfTokens(tokens.slice(group.from, group.to))) classes.add(c);
  return { from: group.from, to: group.to, candidates: candidates.sort((a, b) => b.score - a.score), classes, inner };
}
