import { ACTION_TERMS } from './fix-words';
import { accepts } from './judge-candidate';
import { isBare, type Mention } from './mention';
import type { ReaderContext } from './reader-context';
import { OTHER_TERM, type Token } from './token';

/**
 * Lets the members of a list share what was said of one: "clock and reset good" (backwards),
 * "no picture or sound" (forwards). A list is a run of neighbouring items of one clause.
 */
export function shareStates(mentions: readonly Mention[], tokens: readonly Token[], context: ReaderContext): void {
  contrast(mentions);
  shareVerb(mentions, tokens, context);
  for (const chain of chainsOf(mentions)) {
    shareForward(chain, context, false);
    shareBackward(chain, context);
    shareForward(chain, context, true);
  }
}

/** "Replaced the crystal, the CPU and the RAM": a bare part in a list behind a fix or trial was treated alike. */
function shareVerb(mentions: readonly Mention[], tokens: readonly Token[], context: ReaderContext): void {
  for (const [at, mention] of mentions.entries()) {
    const before = mentions[at - 1];
    const done = before?.candidates[0]?.target;
    if (
      before === undefined ||
      done === undefined ||
      before.place.clause !== mention.place.clause ||
      mention.place.group - before.place.group !== 1 ||
      !isBare(mention)
    )
      continue;
    const roles = mention.candidates.flatMap((c) => (c.target.kind === 'role' ? [c.target.id] : []));
    if (roles.length === 0) continue;
    const score = mention.candidates[0]?.score ?? 1;
    if (done.kind === 'fix') {
      const action = context.fixes.get(done.id)?.action;
      const alike = action === undefined ? [] : entriesNamed(ACTION_TERMS[action], 'fix', { mention, tokens }, context);
      if (alike.length > 0) mention.candidates = alike.map((id) => ({ target: { kind: 'fix', id }, score }));
    } else if (done.kind === 'check' && context.swaps.has(done.id)) {
      const alike = entriesNamed(OTHER_TERM, 'check', { mention, tokens }, context).filter((id) => context.swaps.has(id));
      if (alike.length > 0) mention.candidates = alike.map((id) => ({ target: { kind: 'check', id }, score }));
    }
  }
}

/** Entries whose phrase is this verb and the mention's own words; the best named ones. */
function entriesNamed(
  verb: string,
  kind: 'fix' | 'check',
  { mention, tokens }: { mention: Mention; tokens: readonly Token[] },
  context: ReaderContext,
): string[] {
  const terms = new Set(tokens.slice(mention.piece.from, mention.piece.to).flatMap((t) => t.terms.map((w) => w.term)));
  const named = (context.index.postings.get(verb) ?? [])
    .filter(({ phrase }) => phrase.required.length > 1 && phrase.required.every((t) => t === verb || terms.has(t)))
    .flatMap(({ phrase }) => phrase.targets.map((t) => ({ ...t, length: phrase.required.length - phrase.optional.length / 4 })))
    .flatMap((t) => (t.target.kind === kind ? [{ id: t.target.id, rank: t.length + t.quality }] : []));
  const best = Math.max(...named.map((n) => n.rank));
  return [...new Set(named.filter((n) => n.rank >= best - 0.01).map((n) => n.id))];
}

const CONTRASTING: ReadonlySet<string | null> = new Set(['but', 'yet', 'though', 'although', 'however']);

/** "Picture but no sound": what stands before the contrast is there; "works except sound": what is excepted is not. */
function contrast(mentions: readonly Mention[]): void {
  for (const [at, mention] of mentions.entries()) {
    const next = mentions[at + 1];
    const contrasted =
      next !== undefined &&
      next.place.clause === mention.place.clause + 1 &&
      CONTRASTING.has(next.place.opening) &&
      (next.leadsWithNo || next.negated || standsAlone(next));
    const subject = mention.candidates.some((c) => c.target.kind === 'subject');
    if (mention.place.opening === 'except' && subject && isBare(mention)) mention.negated = true;
    if (contrasted && subject && isBare(mention) && !standsAlone(mention)) mention.affirmed = true;
  }
}

function chainsOf(mentions: readonly Mention[]): Mention[][] {
  const chains: Mention[][] = [];
  for (const mention of mentions) {
    const chain = chains.at(-1);
    const before = chain?.at(-1);
    if (
      chain !== undefined &&
      before !== undefined &&
      before.place.clause === mention.place.clause &&
      mention.place.group - before.place.group === 1
    )
      chain.push(mention);
    else chains.push([mention]);
  }
  return chains;
}

const DENYING: ReadonlySet<string | null> = new Set(['or', 'nor']);

/** "no X or Y": the second is denied too. Over a comma or "and" only what cannot stand alone, and only where nothing later speaks for it. */
function shareForward(chain: readonly Mention[], context: ReaderContext, loosely: boolean): void {
  for (const [at, mention] of chain.entries()) {
    const before = chain[at - 1];
    if (before === undefined || !isBare(mention) || mention.leadsWithNo) continue;
    const denied = before.leadsWithNo || (before.negated && before.stateFrom === 'before');
    if (!denied && before.stateFrom !== 'before') continue;
    const denies = DENYING.has(mention.place.joiner) || (mention.place.joiner === ',' && closesWithOr(chain, at));
    const symptom = standsAlone(mention);
    if (symptom && !(denies && denied)) continue;
    if (!denies && !loosely) continue;
    if (denied) {
      mention.negated = true;
      mention.stateFrom = 'before';
    } else share(before, mention, context, 'before');
  }
}

function closesWithOr(chain: readonly Mention[], at: number): boolean {
  const rest = chain.slice(at);
  const end = rest.findIndex((m) => DENYING.has(m.place.joiner));
  return end >= 0 && rest.slice(0, end + 1).every(isBare);
}

function shareBackward(chain: readonly Mention[], context: ReaderContext): void {
  for (let at = chain.length - 2; at >= 0; at -= 1) {
    const mention = chain[at] as Mention;
    const after = chain[at + 1] as Mention;
    if (!isBare(mention) || standsAlone(mention) || after.stateFrom !== 'after' || after.states.length === 0) continue;
    share(after, mention, context, 'after');
  }
}

function standsAlone(mention: Mention): boolean {
  return mention.candidates.some((c) => c.target.kind === 'symptom' || c.target.kind === 'fix');
}

function share(from: Mention, to: Mention, context: ReaderContext, stateFrom: 'before' | 'after'): void {
  const states = from.states.filter((s) => s.reading === null && accepts(to.candidates, s, context));
  if (states.length === 0) return;
  to.states.push(...states);
  to.stateFrom = stateFrom;
}
