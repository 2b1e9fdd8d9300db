import type { Attached } from './attach-states';
import { isBare, type Mention } from './mention';
import type { ReaderContext } from './reader-context';
import type { Token } from './token';

/** How many mentions away a host may stand. */
const NEAREST = 3;

/**
 * Bare names that only say where a neighbour's finding was seen are part of it: "garbled characters
 * on the screen", "keyboard: some keys dead", "freeze spray on the video RAM". They go with the nearest
 * mention of the same list item that says something. A check goes only with a finding of its own area.
 */
export function absorbContext({ mentions, loose }: Attached, tokens: readonly Token[], context: ReaderContext): Mention[] {
  return mentions.filter((mention, at) => {
    if (
      !isBare(mention) ||
      (standsAlone(mention) && !isOccasion(mention, tokens) && !isPartOfNeighbour(mentions, at, tokens, context))
    )
      return true;
    const result = loose.find(
      (s) => s.result !== null && s.place.clause === mention.place.clause && s.place.group === mention.place.group,
    );
    if (result !== undefined && mention.candidates.every((c) => c.target.kind === 'subject')) {
      result.tokens.push(...knownTokens(mention, tokens));
      return false;
    }
    const host = mentions
      .slice(Math.max(0, at - NEAREST), at + NEAREST + 1)
      .find((m) => m !== mention && isSameItem(m, mention) && isTelling(m, context) && fits(mention, m, context));
    if (host === undefined) return true;
    host.tokens.push(...knownTokens(mention, tokens));
    return false;
  });
}

/** "Rolling" of "rolling hum bar": one word that also belongs to the longer symptom beside it. */
function isPartOfNeighbour(mentions: readonly Mention[], at: number, tokens: readonly Token[], context: ReaderContext): boolean {
  const mention = mentions[at] as Mention;
  if (mention.piece.to - mention.piece.from !== 1) return false;
  const keys = (tokens[mention.piece.from] as Token).terms.flatMap(({ term }) => [
    ...(context.index.entries.get(term)?.keys() ?? []),
  ]);
  return [mentions[at - 1], mentions[at + 1]].some((m) => {
    if (m === undefined || !isSameItem(m, mention) || m.piece.to - m.piece.from < 2) return false;
    const target = m.candidates[0]?.target;
    return target?.kind === 'symptom' && keys.includes(`symptom ${target.id}`);
  });
}

const OCCASION_WORDS: ReadonlySet<string> = new Set(['on', 'at', 'after', 'during', 'when', 'from', 'upon', 'since']);

/** "On power up", "after it powers up": when something was seen, not that it powers up. */
function isOccasion(mention: Mention, tokens: readonly Token[]): boolean {
  const says = mention.candidates[0]?.target;
  if (says?.kind !== 'symptom' || says.value !== 'absent') return false;
  return [1, 2].some((back) => OCCASION_WORDS.has(tokens[mention.piece.from - back]?.word ?? ''));
}

function isSameItem(a: Mention, b: Mention): boolean {
  return a.place.clause === b.place.clause && a.place.group <= b.place.lastGroup && b.place.group <= a.place.lastGroup;
}

function isTelling(mention: Mention, context: ReaderContext): boolean {
  return (
    standsAlone(mention) ||
    !isBare(mention) ||
    mention.candidates.some((c) => c.target.kind === 'check' && context.trials.has(c.target.id))
  );
}

function standsAlone(mention: Mention): boolean {
  return mention.candidates.some((c) => c.target.kind === 'symptom' || c.target.kind === 'fix' || c.target.kind === 'told');
}

function fits(mention: Mention, host: Mention, context: ReaderContext): boolean {
  const checks = mention.candidates.flatMap((c) => (c.target.kind === 'check' ? [c.target.id] : []));
  if (checks.length === 0) return true;
  const areas = new Set(host.candidates.map((c) => areaOf(c.target, context)));
  return (
    checks.some((id) => areas.has(context.checks.get(id)?.area)) ||
    mention.candidates.some((c) => c.target.kind === 'role' || c.target.kind === 'subject')
  );
}

function areaOf(target: Mention['candidates'][number]['target'], context: ReaderContext): string | undefined {
  if (target.kind === 'symptom' || target.kind === 'subject') return context.symptoms.get(target.id)?.area;
  return target.kind === 'check' ? context.checks.get(target.id)?.area : undefined;
}

/** A word in between that nobody knows stays unread. */
function knownTokens(mention: Mention, tokens: readonly Token[]): number[] {
  return mention.tokens.filter((at) => (tokens[at] as Token).known);
}
