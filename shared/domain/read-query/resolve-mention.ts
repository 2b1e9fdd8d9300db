import { FIX_RESULTS } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';
import { judgeCandidate } from './judge-candidate';
import { actionTermsOf } from './fix-words';
import { isBare, type Mention } from './mention';
import { ownOutcome } from './own-outcome';
import type { ReaderContext } from './reader-context';
import type { Token } from './token';
import { OTHER_WORDS } from './word-classes';

/** One finding, several it could be (best first), or none. */
export type Resolution = { kind: 'finding'; finding: Finding } | { kind: 'ambiguous'; choices: Finding[] } | null;

/** Candidates nearer than this to the best one stay possible. */
const NEAR = 0.12;
const MOST_CHOICES = 8;

/** Decides what a mention says, given the states and results that were attached to it. */
export function resolveMention(mention: Mention, tokens: readonly Token[], context: ReaderContext): Resolution {
  const judged = mention.candidates
    .flatMap(({ target, score }) => judge(mention, target, score, context))
    .sort((a, b) => b.score - a.score);
  const top = judged[0];
  if (top === undefined) {
    if (!isBare(mention)) return null;
    return sayingItself(mention, tokens, context) ?? openChoices(mention, context);
  }
  const near = preferred(
    mention,
    tokens,
    judged.filter((j) => j.score >= top.score - NEAR),
  );
  const choices = unique(near.flatMap((j) => j.findings)).slice(0, MOST_CHOICES);
  if (choices.length > 1 && !top.open && near.length === 1) {
    const said = sayingItself(mention, tokens, context);
    if (said !== null) return said;
  }
  if (choices.length === 1 && !top.open) return { kind: 'finding', finding: choices[0] as Finding };
  return { kind: 'ambiguous', choices };
}

/** Where a fix and a trial bear the same name, the verb decides: "reseated the chips" is a fix, "another cable" and "chips reseated" are trials. */
function preferred(mention: Mention, tokens: readonly Token[], near: Judged[]): Judged[] {
  const fixes = near.filter((j) => j.findings[0]?.kind === 'fix');
  const trials = near.filter((j) => j.findings[0]?.kind === 'check');
  if (fixes.length === 0 || trials.length === 0) return near;
  const words = tokens.slice(mention.piece.from, mention.piece.to).map((t) => t.word);
  const verbFirst = actionTermsOf(words[0] ?? '').length > 0 && !words.some((w) => OTHER_WORDS.has(w));
  return verbFirst ? fixes : trials;
}

type Judged = { findings: Finding[]; score: number; open: boolean };

function judge(
  mention: Mention,
  target: Mention['candidates'][number]['target'],
  score: number,
  context: ReaderContext,
): Judged[] {
  if (target.kind === 'fix') return [judgeFix(mention, target.id, score)];
  if (target.kind === 'check' && context.trials.has(target.id) && mention.states.length === 0) {
    const outcome = mention.result === null ? undefined : context.trials.get(target.id)?.get(mention.result);
    if (outcome !== undefined)
      return [{ findings: [{ kind: 'check', id: target.id, value: outcome }], score: score + 0.5, open: false }];
  }
  const judgement = judgeCandidate(target, mention, context);
  return judgement.findings.length === 0 ? [] : [{ findings: judgement.findings, score: score + judgement.fit, open: false }];
}

function judgeFix(mention: Mention, id: string, score: number): Judged {
  const results = mention.result === null ? FIX_RESULTS : [mention.result];
  return {
    findings: results.map((value) => ({ kind: 'fix', id, value })),
    score: score + (mention.result === null ? 0 : 0.5),
    open: mention.result === null,
  };
}

/** A check whose own words name an outcome. */
function sayingItself(mention: Mention, tokens: readonly Token[], context: ReaderContext): Resolution {
  const best = mention.candidates[0];
  if (best?.target.kind !== 'check') return null;
  const outcome = ownOutcome(best.target.id, mention, tokens, context.index);
  return outcome === null ? null : { kind: 'finding', finding: { kind: 'check', id: best.target.id, value: outcome } };
}

/** A bare thing ("clock"): everything it could say, best candidate first. */
function openChoices(mention: Mention, context: ReaderContext): Resolution {
  const best = mention.candidates[0]?.score ?? 0;
  const choices = mention.candidates
    .filter((c) => c.score >= best - NEAR)
    .flatMap(({ target }): Finding[] => {
      if (target.kind === 'subject')
        return [
          { kind: 'symptom', id: target.id, value: 'present' },
          { kind: 'symptom', id: target.id, value: 'absent' },
        ];
      const ids =
        target.kind === 'check' ? [target.id] : target.kind === 'role' ? (context.checksOfRole.get(target.id) ?? []) : [];
      return ids.flatMap((id) =>
        (context.checks.get(id)?.outcomes ?? []).map((o): Finding => ({ kind: 'check', id, value: o.slug })),
      );
    });
  return choices.length === 0 ? null : { kind: 'ambiguous', choices: unique(choices).slice(0, MOST_CHOICES) };
}

function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((f) => {
    const key = `${f.kind} ${f.id} ${f.value}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
