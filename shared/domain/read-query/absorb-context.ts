import { isBare, type Mention } from './mention';
import type { ReaderContext } from './reader-context';

/** How many mentions away a host may stand. */
const NEAREST = 3;

/**
 * Bare names that only say where a neighbour's finding was seen are part of it: "garbled characters
 * on the screen", "keyboard: some keys dead", "freeze spray on the video RAM". They go with the nearest
 * mention of the same list item that says something. A check goes only with a finding of its own area.
 */
export function absorbContext(mentions: readonly Mention[], context: ReaderContext): Mention[] {
  return mentions.filter((mention, at) => {
    if (!isBare(mention) || standsAlone(mention)) return true;
    const host = mentions
      .slice(Math.max(0, at - NEAREST), at + NEAREST + 1)
      .find((m) => m !== mention && isSameItem(m, mention) && isTelling(m) && fits(mention, m, context));
    if (host === undefined) return true;
    host.tokens.push(...mention.tokens);
    return false;
  });
}

function isSameItem(a: Mention, b: Mention): boolean {
  return a.place.clause === b.place.clause && a.place.group <= b.place.lastGroup && b.place.group <= a.place.lastGroup;
}

function isTelling(mention: Mention): boolean {
  return standsAlone(mention) || !isBare(mention);
}

function standsAlone(mention: Mention): boolean {
  return mention.candidates.some((c) => c.target.kind === 'symptom' || c.target.kind === 'fix' || c.target.kind === 'told');
}

function fits(mention: Mention, host: Mention, context: ReaderContext): boolean {
  const checks = mention.candidates.flatMap((c) => (c.target.kind === 'check' ? [c.target.id] : []));
  if (checks.length === 0) return true;
  const areas = new Set(host.candidates.map((c) => areaOf(c.target, context)));
  return checks.some((id) => areas.has(context.checks.get(id)?.area)) || mention.candidates.some((c) => c.target.kind === 'role' || c.target.kind === 'subject');
}

function areaOf(target: Mention['candidates'][number]['target'], context: ReaderContext): string | undefined {
  if (target.kind === 'symptom' || target.kind === 'subject') return context.symptoms.get(target.id)?.area;
  return target.kind === 'check' ? context.checks.get(target.id)?.area : undefined;
}
