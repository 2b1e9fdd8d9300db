import { asModifier, canModify } from './build-nodes';
import { GENERAL_CLASSES } from './outcome-of-state';
import { accepts, judgeCandidate } from './judge-candidate';
import { isBare, type Mention, type Modifier, type Node } from './mention';
import type { ReaderContext } from './reader-context';
import { relatedChecks } from './related-check';
import type { Token } from './token';

type Walk = {
  tokens: readonly Token[];
  context: ReaderContext;
  mentions: Mention[];
  /** States not yet said of anything; results of fixes end up here too. */
  loose: Modifier[];
  /** The mention before, in the same list item. */
  last: Mention | null;
  waiting: Modifier[];
  negator: number | null;
};

export type Attached = { mentions: Mention[]; loose: Modifier[] };

/**
 * Gives every state and every "no" to what it is said of: to the mention before it in the same list
 * item, else to the one after it, else to a bare one in the item before ("clock: present").
 */
export function attachStates(nodes: readonly Node[], tokens: readonly Token[], context: ReaderContext): Attached {
  const walk: Walk = { tokens, context, mentions: [], loose: [], last: null, waiting: [], negator: null };
  let item = '';
  for (const [at, node] of nodes.entries()) {
    const here = `${node.place.clause}.${node.place.group}`;
    if (here !== item) closeItem(walk);
    item = here;
    if (node.kind === 'negator') walk.negator = node.at;
    else if (node.kind === 'modifier') takeState(walk, node);
    else takeMention(walk, node, nodes[at + 1]);
  }
  closeItem(walk);
  return { mentions: walk.mentions, loose: walk.loose };
}

function closeItem(walk: Walk): void {
  if (walk.negator !== null && walk.last !== null && isBare(walk.last)) negate(walk.last, walk.negator, 'after');
  for (const state of walk.waiting) {
    const before = previousBare(walk, state) ?? previousAgreeing(walk, state);
    if (before !== null) attach(before, state, 'after');
    else if (!becomesRelatedCheck(walk, state)) walk.loose.push(state);
  }
  walk.last = null;
  walk.waiting = [];
  walk.negator = null;
}

/** The nearest bare mention of the same clause that the state can be said of. */
function previousBare(walk: Walk, state: Modifier): Mention | null {
  const mention = walk.mentions.at(-1);
  if (mention === undefined || mention.place.clause !== state.place.clause || !isBare(mention)) return null;
  if (mention.candidates.some((c) => c.target.kind === 'symptom')) return null;
  if (isFixOrTrial(walk, mention) && !isDirectOutcome(mention, state)) return null;
  return accepts(mention.candidates, state, walk.context) ? mention : null;
}

/** "Present and correct": a second state that says the same of the same thing. */
function previousAgreeing(walk: Walk, state: Modifier): Mention | null {
  const mention = walk.mentions.at(-1);
  if (
    mention === undefined ||
    mention.stateFrom !== 'after' ||
    mention.place.clause !== state.place.clause ||
    state.place.group - mention.place.group !== 1 ||
    state.place.joiner !== 'and'
  )
    return null;
  if (state.result !== null && isFixOrTrial(walk, mention)) return null;
  const said = (states: Modifier[]) =>
    mention.candidates
      .map((c) => JSON.stringify(judgeCandidate(c.target, { negated: mention.negated, states }, walk.context).findings))
      .join();
  return said(mention.states) === said([...mention.states, state]) ? mention : null;
}

/** A state that fits no mention may still, with the words around it, name another check and its outcome. */
function becomesRelatedCheck(walk: Walk, state: Modifier): boolean {
  if (state.reading !== null || state.result !== null || state.outcomes.size === 0) return false;
  if (state.tokens.every((at) => (walk.tokens[at] as Token).role === 'filler')) return false;
  if (walk.last === null && state.classes.size > 0 && [...state.classes].every((c) => GENERAL_CLASSES.has(c))) return false;
  const bare = walk.last !== null && isBare(walk.last) && saysMore(walk.last) ? walk.last : null;
  const things = bare !== null ? walk.tokens.slice(bare.piece.from, bare.piece.to) : weakNeighbours(walk, state);
  const related = relatedChecks(things, state, walk.context.index);
  const only = related[0];
  if (only === undefined || related.length > 2) return false;
  const candidates = related.map((id) => ({ target: { kind: 'check' as const, id }, score: 1 }));
  if (bare !== null) {
    bare.candidates = candidates;
    attach(bare, state, 'after');
    return true;
  }
  const mention: Mention = { ...emptyMention(state), candidates };
  attach(mention, state, 'after');
  walk.mentions.push(mention);
  return true;
}

function emptyMention(state: Modifier): Mention {
  return {
    kind: 'mention',
    piece: state.piece,
    place: state.place,
    candidates: [],
    negated: false,
    affirmed: false,
    leadsWithNo: false,
    stateFrom: null,
    states: [],
    result: null,
    tokens: [...state.tokens],
    resultTokens: [],
  };
}

/** Words such as "rails" right before the state, which name nothing alone. */
function weakNeighbours(walk: Walk, state: Modifier): Token[] {
  const found: Token[] = [];
  const first = Math.min(...state.tokens);
  for (let at = first - 1; at >= Math.max(0, first - 3); at -= 1) {
    const token = walk.tokens[at] as Token;
    if (token.role === 'joiner' || token.role === 'break' || token.role === 'content') break;
    if (token.role === 'weak') found.push(token);
  }
  return found;
}

function isFixOrTrial(walk: Walk, mention: Mention): boolean {
  return mention.candidates[0]?.target.kind === 'fix' || isTrial(walk, mention);
}

function takeState(walk: Walk, state: Modifier): void {
  if (walk.negator !== null) {
    state.negated = true;
    state.tokens.push(walk.negator);
    walk.negator = null;
  }
  const last = walk.last;
  const taker = last === null ? undefined : itemOf(walk, last).find((m) => canTake(walk, m, state));
  if (taker !== undefined) {
    attach(taker, state, 'after');
    return;
  }
  walk.waiting.push(state);
}

/** The mentions of the same item, nearest first. */
function itemOf(walk: Walk, last: Mention): Mention[] {
  return walk.mentions.filter((m) => m.place.clause === last.place.clause && m.place.group === last.place.group).reverse();
}

/** A second state right behind the first ("stuck low") or a number behind a word ("low, 4.2 V") joins it. */
function canTake(walk: Walk, mention: Mention, state: Modifier): boolean {
  if (isFixOrTrial(walk, mention) && !isDirectOutcome(mention, state)) return false;
  if (isBare(mention)) return accepts(mention.candidates, state, walk.context);
  if (mention.stateFrom === 'before' && mention.states.length > 0) return false;
  if (mention.negated) return false;
  return mention.candidates.some(
    (c) => judgeCandidate(c.target, { negated: false, states: [...mention.states, state] }, walk.context).findings.length > 0,
  );
}

/** A trial's own outcome that is no general result of fixes ("works fine"). */
function isDirectOutcome(mention: Mention, state: Modifier): boolean {
  return (
    state.result === null &&
    mention.candidates.some((c) => c.target.kind === 'check' && (state.outcomes.has(c.target.id) || state.classes.size > 0))
  );
}

function isTrial(walk: Walk, mention: Mention): boolean {
  const target = mention.candidates[0]?.target;
  return target?.kind === 'check' && walk.context.trials.has(target.id);
}

function takeMention(walk: Walk, mention: Mention, next: Node | undefined): void {
  if (canModify(mention) && isSaidOfNeighbour(walk, mention, next)) {
    takeState(walk, asModifier(walk.tokens, mention.piece, mention.place));
    return;
  }
  if (walk.negator !== null) {
    negate(mention, walk.negator, 'before');
    walk.negator = null;
  }
  walk.waiting = walk.waiting.filter((state) => {
    if (isFixOrTrial(walk, mention) && !isDirectOutcome(mention, state)) return true;
    if (!accepts(mention.candidates, state, walk.context)) return true;
    attach(mention, state, 'before');
    return false;
  });
  walk.mentions.push(mention);
  walk.last = mention;
}

/** "dead" of "clock dead" or "dead fuse": a state of its neighbour, not a symptom of its own. */
function isSaidOfNeighbour(walk: Walk, mention: Mention, next: Node | undefined): boolean {
  const state = asModifier(walk.tokens, mention.piece, mention.place);
  if (walk.last !== null && isBare(walk.last) && saysMore(walk.last)) return accepts(walk.last.candidates, state, walk.context);
  if (next?.kind !== 'mention' || next.place.group !== mention.place.group || next.place.clause !== mention.place.clause)
    return false;
  return saysMore(next) && !canModify(next) && accepts(next.candidates, state, walk.context);
}

/** A mention that still needs a state: it is no symptom by itself. */
function saysMore(mention: Mention): boolean {
  return !mention.candidates.some((c) => c.target.kind === 'symptom' || c.target.kind === 'fix');
}

function negate(mention: Mention, at: number, from: 'before' | 'after'): void {
  mention.negated = true;
  mention.stateFrom = from;
  mention.tokens.push(at);
}

function attach(mention: Mention, state: Modifier, from: 'before' | 'after'): void {
  mention.states.push(state);
  mention.stateFrom ??= from;
  mention.tokens.push(...state.tokens);
}
