import type { Check, Fix, Symptom, Vocabulary } from '../../schemas/vocabulary';
import { RESULT_PHRASES } from './fix-words';
import type { FixResult } from '../../schemas/case';
import { classesOfOutcomes, type OutcomeClasses } from './outcome-of-state';
import { buildPhraseIndex, type PhraseIndex } from './phrase-index';
import { phraseWords } from './phrase-terms';
import { OTHER_WORDS } from './word-classes';
import type { Steps } from '../steps/steps';

/** A vocabulary arranged for reading, built once. */
export type ReaderContext = {
  index: PhraseIndex;
  symptoms: ReadonlyMap<string, Symptom>;
  checks: ReadonlyMap<string, Check>;
  fixes: ReadonlyMap<string, Fix>;
  outcomeClasses: ReadonlyMap<string, OutcomeClasses>;
  checksOfRole: ReadonlyMap<string, readonly string[]>;
  /** For checks that try something out ("known-good cable"): what "no change" or "cured" means. */
  trials: ReadonlyMap<string, ReadonlyMap<FixResult, string>>;
  /** Trials that put something else in the place of a part ("another cable"). */
  swaps: ReadonlySet<string>;
};

function isSwap(check: Check): boolean {
  return [check.label, ...check.synonyms].some((p) => phraseWords(p).some((w) => OTHER_WORDS.has(w) || w === 'swapped'));
}

export function* buildReaderContext(vocabulary: Vocabulary): Steps<ReaderContext> {
  const checksOfRole = new Map<string, string[]>();
  const trials = new Map<string, ReadonlyMap<FixResult, string>>();
  for (const check of vocabulary.checks) {
    checksOfRole.set(check.targetRole, [...(checksOfRole.get(check.targetRole) ?? []), check.slug]);
    const results = trialResults(check);
    if (results.size > 0) trials.set(check.slug, results);
  }
  const index = yield* buildPhraseIndex(vocabulary);
  return {
    index,
    symptoms: new Map(vocabulary.symptoms.map((s) => [s.slug, s])),
    checks: new Map(vocabulary.checks.map((c) => [c.slug, c])),
    fixes: new Map(vocabulary.fixes.map((f) => [f.slug, f])),
    outcomeClasses: new Map(vocabulary.checks.map((c) => [c.slug, classesOfOutcomes(c)])),
    checksOfRole,
    trials,
    swaps: new Set(vocabulary.checks.filter((c) => trials.has(c.slug) && isSwap(c)).map((c) => c.slug)),
  };
}

const NO_CHANGE: ReadonlySet<string> = new Set(['no change', 'same fault', 'same', 'same problem', 'no difference']);

/** A check is a trial where one of its outcomes says "no change" or "same fault". */
function trialResults(check: Check): Map<FixResult, string> {
  const results = new Map<FixResult, string>();
  const names = check.outcomes.map((o) => ({
    slug: o.slug,
    phrases: [o.slug.replaceAll('-', ' '), o.label.toLowerCase(), ...o.synonyms.map((s) => s.toLowerCase())],
  }));
  const unchanged = names.find((n) => n.phrases.slice(0, 2).some((p) => NO_CHANGE.has(p)));
  if (unchanged === undefined) return results;
  results.set('no-change', unchanged.slug);
  const rest = names.filter((n) => n.slug !== unchanged.slug);
  for (const { slug, phrases } of rest) {
    for (const result of ['cured', 'partly', 'symptom-changed', 'made-worse'] as const) {
      const named =
        phrases.some((p) => RESULT_PHRASES[result].includes(p)) || (result === 'symptom-changed' && /^change/.test(slug));
      if (named && !results.has(result)) results.set(result, slug);
    }
  }
  const only = rest[0];
  if (rest.length === 1 && only !== undefined && !results.has('cured')) results.set('cured', only.slug);
  if (!results.has('cured') && rest.some((n) => n.slug === 'good-there')) results.set('cured', 'good-there');
  return results;
}
