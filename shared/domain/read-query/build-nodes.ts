import { blendPhrases } from './blend-phrases';
import type { Piece } from './cover-clause';
import { coverClause } from './cover-clause';
import { matchPhrases } from './match-phrases';
import type { Mention, Modifier, Node, Place } from './mention';
import type { Target } from './phrase';
import type { PhraseIndex } from './phrase-index';
import type { Token } from './token';

/** Words without a full stop beyond this are cut, so that noise stays quick; nobody's clause is that long. */
const LONGEST_CLAUSE = 80;

/** Reads tokens into mentions, states and negators in their order, clause by clause. */
export function buildNodes(tokens: readonly Token[], index: PhraseIndex): Node[] {
  const nodes: Node[] = [];
  let clause = 0;
  let from = 0;
  for (let at = 0; at <= tokens.length; at += 1) {
    if (at < tokens.length && at - from < LONGEST_CLAUSE && (tokens[at] as Token).role !== 'break') continue;
    if (at > from) nodes.push(...nodesOfClause(tokens, from, at, clause, index));
    clause += 1;
    from = at < tokens.length && (tokens[at] as Token).role !== 'break' ? at : at + 1;
  }
  return nodes;
}

function nodesOfClause(tokens: readonly Token[], from: number, to: number, clause: number, index: PhraseIndex): Node[] {
  const matches = [...matchPhrases(tokens, from, to, index), ...blendPhrases(tokens, from, to, index)];
  const pieces = coverClause(tokens, from, to, matches);
  const opening = from > 0 ? (tokens[from - 1] as Token).word : null;
  const places = placesOf(tokens, from, to);
  return pieces.flatMap((piece) => {
    const start = places[piece.from - from] as ItemPlace;
    const place: Place = { ...start, lastGroup: (places[piece.to - 1 - from] as ItemPlace).group, clause, opening };
    const inner = piece.inner.length === 0 || isFix(piece) ? [] : innerNodes(tokens, piece, place, index);
    return [nodeOf(tokens, piece, place), ...inner];
  });
}

function isFix(piece: Piece): boolean {
  return piece.candidates[0]?.target.kind === 'fix';
}

/** States that stand in the middle of a name ("clock is missing at the cpu") follow the name. */
function innerNodes(tokens: readonly Token[], piece: Piece, place: Place, index: PhraseIndex): Node[] {
  const own = piece.inner.map((at) => tokens[at] as Token);
  const pieces = coverClause(own, 0, own.length, matchPhrases(own, 0, own.length, index));
  return pieces.map((p) => {
    const ats = piece.inner.slice(p.from, p.to);
    const moved: Piece = { ...p, from: ats[0] as number, to: (ats.at(-1) as number) + 1, inner: [] };
    const node = nodeOf(tokens, moved, place);
    return node.kind === 'mention' ? asModifier(tokens, moved, place) : node;
  });
}

type ItemPlace = Pick<Place, 'group' | 'joiner'>;

function placesOf(tokens: readonly Token[], from: number, to: number): ItemPlace[] {
  const places: ItemPlace[] = [];
  let group = 0;
  let joiner: string | null = null;
  for (let at = from; at < to; at += 1) {
    const token = tokens[at] as Token;
    if (token.role === 'joiner') {
      const follows = at > from && (tokens[at - 1] as Token).role === 'joiner';
      joiner = follows && token.word === ',' ? joiner : token.word;
      if (!follows) group += 1;
    } else if (token.word === 'nor') {
      group += 1;
      joiner = 'nor';
    }
    places.push({ group, joiner });
  }
  return places;
}

const ENTITY_KINDS: ReadonlySet<Target['kind']> = new Set<Target['kind']>(['symptom', 'subject', 'check', 'told', 'fix', 'role']);

function nodeOf(tokens: readonly Token[], piece: Piece, place: Place): Node {
  const first = tokens[piece.from] as Token;
  if (piece.candidates.length === 0 && first.role === 'negator') return { kind: 'negator', at: piece.from, place };
  const entities = piece.candidates.filter((c) => ENTITY_KINDS.has(c.target.kind));
  if (entities.length === 0) return asModifier(tokens, piece, place);
  return {
    kind: 'mention',
    piece,
    place,
    candidates: entities,
    negated: false,
    affirmed: false,
    leadsWithNo: first.role === 'negator',
    stateFrom: null,
    states: [],
    result: null,
    tokens: tokensOf(piece),
    resultTokens: [],
  };
}

/** The same piece taken as a state: "dead" of "clock dead", not the symptom. */
export function asModifier(tokens: readonly Token[], piece: Piece, place: Place): Modifier {
  const outcomes = new Map<string, string>();
  let result: Modifier['result'] = null;
  for (const { target } of piece.candidates) {
    if (target.kind === 'outcome' && !outcomes.has(target.check)) outcomes.set(target.check, target.outcome);
    if (target.kind === 'result' && result === null) result = target.result;
  }
  const first = tokens[piece.from] as Token;
  const reading = piece.to - piece.from === 1 ? first.reading : null;
  return {
    kind: 'modifier',
    piece,
    place,
    classes: piece.classes,
    outcomes,
    result,
    reading,
    negated: false,
    tokens: tokensOf(piece),
  };
}

/** True for a piece that could be said of something else: it names a state, an outcome or a result. */
export function canModify(mention: Mention): boolean {
  return (
    mention.piece.classes.size > 0 ||
    mention.piece.candidates.some((c) => c.target.kind === 'outcome' || c.target.kind === 'result')
  );
}

function tokensOf(piece: Piece): number[] {
  const inner = new Set(piece.inner);
  return Array.from({ length: piece.to - piece.from }, (_, i) => piece.from + i).filter((at) => !inner.has(at));
}
