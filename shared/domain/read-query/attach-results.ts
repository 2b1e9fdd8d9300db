import { judgeCandidate } from './judge-candidate';
import type { Mention, Modifier } from './mention';
import type { ReaderContext } from './reader-context';
import type { Token } from './token';
import { AFTER_WORDS, NOW_WORDS, STILL_WORDS, TRIED_WORDS } from './word-classes';
import type { FixResult } from '../../schemas/case';

type Held = { result: FixResult; tokens: number[]; mention: Mention | null };
type Step = { at: number; mention: Mention } | { at: number; state: Modifier };

/**
 * Gives the results of fixes and trials to the fixes they speak of: "replaced the crystal and the
 * video RAM, no change" to both, "no change after a recap" forwards. "Still grey" after a fix says that
 * it changed nothing, "now grey" that it changed the symptom; "tried" and "already" imply no change.
 */
export function attachResults(
  attached: { mentions: Mention[]; loose: Modifier[] },
  tokens: readonly Token[],
  context: ReaderContext,
): void {
  const steps: Step[] = [
    ...attached.mentions.map((mention) => ({ at: mention.piece.from, mention })),
    ...attached.loose.map((state) => ({ at: state.piece.from, state })),
  ].sort((a, b) => a.at - b.at);
  let pending: Mention[] = [];
  let held: Held | null = null;
  for (const [index, step] of steps.entries()) {
    if ('mention' in step && isTryable(step.mention, context)) {
      const link: 'after' | 'list' | null = held === null ? null : linkBefore(step.mention, held.mention, tokens);
      if (held !== null && link !== null) {
        give(step.mention, held.result, link === 'after' ? held.tokens : []);
        held = { result: held.result, tokens: held.tokens, mention: step.mention };
      } else if (step.mention.result === null) pending.push(step.mention);
      continue;
    }
    const scene = { tokens, pending: pending.length > 0, previous: steps[index - 1], context };
    const spoken = trialResult(step, context) ?? spokenResult(step, scene);
    if (spoken === null) continue;
    const own = 'state' in step ? step.state.tokens : [];
    if (pending.length > 0) {
      for (const [n, fix] of pending.entries()) give(fix, spoken, n === pending.length - 1 ? own : []);
      pending = [];
    } else if ('state' in step || spoken === 'no-change' || spoken === 'cured')
      held = { result: spoken, tokens: own, mention: null };
  }
  for (const fix of pending) if (wasTried(fix, tokens)) fix.result = 'no-change';
}

/** The result that a trial in the same list was told: the fixes before it share it. */
function trialResult(step: Step, context: ReaderContext): FixResult | null {
  if (!('mention' in step) || !isTrial(step.mention, context)) return null;
  return step.mention.states.find((s) => s.result !== null)?.result ?? null;
}

/** True for a fix, and for a check that tries something out and has not been told its outcome yet. */
export function isTryable(mention: Mention, context: ReaderContext): boolean {
  const target = mention.candidates[0]?.target;
  if (target?.kind === 'fix') return true;
  return target?.kind === 'check' && context.trials.has(target.id) && mention.states.length === 0;
}

function isTrial(mention: Mention, context: ReaderContext): boolean {
  const target = mention.candidates[0]?.target;
  return target?.kind === 'check' && context.trials.has(target.id);
}

function give(fix: Mention, result: FixResult, tokens: readonly number[]): void {
  fix.result = result;
  fix.resultTokens.push(...tokens);
}

/** "no change after a recap", "no joy with new RAM and a new crystal". */
function linkBefore(fix: Mention, previous: Mention | null, tokens: readonly Token[]): 'after' | 'list' | null {
  if (previous !== null)
    return fix.place.clause === previous.place.clause && fix.place.group - previous.place.group === 1 && fix.place.joiner !== ','
      ? 'list'
      : null;
  for (let at = fix.piece.from; at >= Math.max(0, fix.piece.from - 4); at -= 1) {
    const token = tokens[at] as Token;
    if (token.role === 'break' || token.word === ',') return null;
    if (AFTER_WORDS.has(token.word)) return 'after';
  }
  return null;
}

type Scene = { tokens: readonly Token[]; pending: boolean; previous: Step | undefined; context: ReaderContext };

function spokenResult(step: Step, { tokens, pending, previous, context }: Scene): FixResult | null {
  const piece = 'mention' in step ? step.mention.piece : step.state.piece;
  const still =
    hasWordBefore(step.at, tokens, STILL_WORDS) || tokens.slice(piece.from, piece.to).some((t) => STILL_WORDS.has(t.word));
  const now = hasWordBefore(step.at, tokens, NOW_WORDS) || hasWordAfter(step, tokens);
  if ('state' in step) {
    if (step.state.result !== null && !(step.state.result === 'cured' && step.state.negated)) return step.state.result;
    if (step.state.result === 'cured') return 'no-change';
    const classes = step.state.classes;
    const fine = (classes.has('good') || classes.has('present')) !== step.state.negated;
    if (classes.size === 0 || !pending) return still && !fine ? 'no-change' : null;
    if (still || !fine) return 'no-change';
    return 'cured';
  }
  const harm = showsHarm(step.mention, context);
  if (!harm && endedNow(step.mention, tokens, context)) return 'cured';
  if (harm && still) return 'no-change';
  if (harm && pending && now) return 'symptom-changed';
  if (
    harm &&
    pending &&
    (brokenOff(step.at, previous, tokens) || step.mention.negated || step.mention.leadsWithNo) &&
    previous !== undefined &&
    'mention' in previous &&
    isTryable(previous.mention, context) &&
    brokenOff(step.at, previous, tokens)
  )
    return 'no-change';
  return null;
}

const ENDED_WORDS: ReadonlySet<string> = new Set([
  'gone',
  'now',
  'again',
  'disappeared',
  'vanished',
  'cleared',
  'fixed',
  'cured',
  'back',
]);

/** "Hum gone", "drive spins now": a symptom that was there and is no more. */
function endedNow(mention: Mention, tokens: readonly Token[], context: ReaderContext): boolean {
  const absent = mention.candidates.some(({ target }) => {
    const finding = judgeCandidate(target, mention, context).findings[0];
    return finding?.kind === 'symptom' && finding.value === 'absent';
  });
  const around = tokens.slice(Math.max(0, mention.piece.from - 1), mention.piece.to + 2);
  return absent && around.some((t) => ENDED_WORDS.has(t.word));
}

/** A symptom that is there, or a check whose outcome is not the working one. */
function showsHarm(mention: Mention, context: ReaderContext): boolean {
  for (const { target } of mention.candidates) {
    const finding = judgeCandidate(target, mention, context).findings[0];
    if (finding === undefined) continue;
    if (finding.kind === 'symptom') return finding.value === 'present';
    if (finding.kind === 'check') return finding.value !== context.checks.get(finding.id)?.workingOutcome;
  }
  return false;
}

const SEARCHED_WORDS = 4;

function hasWordBefore(at: number, tokens: readonly Token[], words: ReadonlySet<string>): boolean {
  for (let i = at; i >= Math.max(0, at - SEARCHED_WORDS); i -= 1) {
    const token = tokens[i] as Token;
    if (words.has(token.word)) return true;
    if (i < at && (token.role === 'break' || token.role === 'content')) return false;
  }
  return false;
}

function hasWordAfter(step: Step, tokens: readonly Token[]): boolean {
  const to = 'mention' in step ? step.mention.piece.to : step.state.piece.to;
  const next = tokens[to];
  return next !== undefined && next.word === 'now';
}

/** "swapped the crystal but no clock": what follows "but" is what the fix left. */
function brokenOff(at: number, previous: Step | undefined, tokens: readonly Token[]): boolean {
  if (previous === undefined) return false;
  for (let i = previous.at; i < at; i += 1)
    if (['but', 'yet', 'though', 'however'].includes((tokens[i] as Token).word)) return true;
  return false;
}

function wasTried(fix: Mention, tokens: readonly Token[]): boolean {
  for (let at = Math.max(0, fix.piece.from - SEARCHED_WORDS); at < Math.min(tokens.length, fix.piece.to + 2); at += 1) {
    if (TRIED_WORDS.has((tokens[at] as Token).word)) return true;
  }
  return false;
}
