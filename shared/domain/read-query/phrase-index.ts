import type { FixResult } from '../../schemas/case';
import type { Vocabulary } from '../../schemas/vocabulary';
import { add, addWhole, addWords, type Builder, insert, isNo, QUALITY } from './collect-phrases';
import { characteristicTerms, contrastsOf, entriesOf } from './entry-terms';
import { ACTION_TERMS, actionWords, RESULT_PHRASES } from './fix-words';
import { buildLexicon, type Lexicon } from './lexicon';
import type { Phrase, Target } from './phrase';
import { phraseTerms, phraseWords } from './phrase-terms';
import { roleRenamer } from './rename-roles';
import { subjectsOf } from './symptom-subjects';
import { STATE_PHRASES, stateWords } from './state-words';
import { NEGATOR_WORDS, WEAK_WORDS } from './word-classes';
import type { Steps } from '../steps/steps';

/** Everything that can be recognised, by the terms that name it. */
export type PhraseIndex = {
  phrases: readonly Phrase[];
  /** Term → phrases that need it (slot is its place in `required`) or profit from it (slot −1). */
  postings: ReadonlyMap<string, readonly { phrase: Phrase; slot: number }[]>;
  /** Term → symptoms (present) and checks that have it as a needed word of a written phrase. */
  entries: ReadonlyMap<string, ReadonlyMap<string, Target>>;
  /** Terms before and after the "but" of phrases that contain one ("border but no text"). */
  contrasts: readonly { before: readonly string[]; after: readonly string[] }[];
  /** Term → symptoms of which at least half of the written phrases have it. */
  characteristic: ReadonlyMap<string, ReadonlySet<string>>;
  lexicon: Lexicon;
};

/** Builds the index from a vocabulary and the general words of the bench. */
export function* buildPhraseIndex(vocabulary: Vocabulary): Steps<PhraseIndex> {
  const builder: Builder = { byKey: new Map(), known: new Map(), words: new Map() };
  yield* addSymptoms(builder, vocabulary);
  yield* addChecks(builder, vocabulary);
  yield* addFixes(builder, vocabulary);
  addTold(builder, vocabulary);
  yield* addDerivedSymptoms(builder, vocabulary);
  yield* addDerivedChecks(builder, vocabulary);
  for (const role of vocabulary.roles) {
    for (const phrase of [role.label, ...role.synonyms]) add(builder, phrase, { kind: 'role', id: role.slug }, QUALITY.derived);
  }
  for (const [phrase, classes] of Object.entries(STATE_PHRASES))
    add(builder, phrase, { kind: 'state', classes }, QUALITY.written);
  for (const [result, phrases] of Object.entries(RESULT_PHRASES) as [FixResult, readonly string[]][]) {
    for (const phrase of phrases) add(builder, phrase, { kind: 'result', result }, QUALITY.written);
  }
  for (const word of benchWords()) if (!builder.words.has(word)) builder.words.set(word, 1);
  yield;
  const phrases = [...builder.byKey.values()];
  return {
    phrases,
    postings: postingsOf(phrases),
    entries: entriesOf(phrases, QUALITY.written),
    contrasts: contrastsOf(vocabulary),
    characteristic: characteristicTerms(vocabulary),
    lexicon: buildLexicon(builder.words),
  };
}

/** General words of five letters and more, so that slips in "missing" or "replaced" are mended too. */
function benchWords(): string[] {
  return [...stateWords(), ...actionWords(), ...NEGATOR_WORDS, ...WEAK_WORDS].filter((w) => w.length >= 5 && /^\p{L}+$/u.test(w));
}

function* addSymptoms(builder: Builder, vocabulary: Vocabulary): Steps<void> {
  for (const symptom of vocabulary.symptoms) {
    const written = [symptom.label, ...symptom.synonyms];
    for (const phrase of written) add(builder, phrase, { kind: 'symptom', id: symptom.slug, value: 'present' }, QUALITY.written);
    for (const phrase of symptom.absentPhrases)
      add(builder, phrase, { kind: 'symptom', id: symptom.slug, value: 'absent' }, QUALITY.written);
    for (const { words, lack } of subjectsOf(symptom)) {
      addWords(builder, words, { kind: 'subject', id: symptom.slug, lack }, lack === 'good' ? QUALITY.guessed : QUALITY.derived);
    }
    yield;
  }
}

/** Slugs, and phrases with another name for a part, where no entry writes the same phrase itself. */
function* addDerivedSymptoms(builder: Builder, vocabulary: Vocabulary): Steps<void> {
  const otherNames = roleRenamer(vocabulary.roles);
  for (const symptom of vocabulary.symptoms) {
    const target: Target = { kind: 'symptom', id: symptom.slug, value: 'present' };
    for (const phrase of [symptom.label, ...symptom.synonyms].flatMap((w) => otherNames(w)))
      add(builder, phrase, target, QUALITY.derived);
    add(builder, symptom.slug.replaceAll('-', ' '), target, QUALITY.slug);
    yield;
  }
}

function* addDerivedChecks(builder: Builder, vocabulary: Vocabulary): Steps<void> {
  const otherNames = roleRenamer(vocabulary.roles);
  for (const check of vocabulary.checks) {
    const target: Target = { kind: 'check', id: check.slug };
    const written = [check.label, ...check.synonyms];
    for (const phrase of written.flatMap(rangeMembers)) add(builder, phrase, target, QUALITY.derived);
    for (const phrase of written.flatMap((w) => otherNames(w))) add(builder, phrase, target, QUALITY.derived);
    add(builder, check.slug.replaceAll('-', ' '), target, QUALITY.slug);
    yield;
  }
}

function* addChecks(builder: Builder, vocabulary: Vocabulary): Steps<void> {
  for (const check of vocabulary.checks) {
    const target: Target = { kind: 'check', id: check.slug };
    const written = [check.label, ...check.synonyms];
    for (const phrase of written) add(builder, phrase, target, QUALITY.written);
    for (const outcome of check.outcomes) {
      const named: Target = { kind: 'outcome', check: check.slug, outcome: outcome.slug };
      for (const phrase of [outcome.label, ...outcome.synonyms]) {
        add(builder, phrase, named, QUALITY.written);
        if (namesItsCheck(phrase, written)) addWhole(builder, phrase, { kind: 'told', check: check.slug, outcome: outcome.slug });
      }
      add(builder, outcome.slug.replaceAll('-', ' '), named, QUALITY.slug);
    }
    yield;
  }
}

/** A part's name with a heat or cold that only one of its checks knows: "cpu hot" is its temperature, not a general symptom. */
function addTold(builder: Builder, vocabulary: Vocabulary): void {
  for (const role of vocabulary.roles) {
    const checks = vocabulary.checks.filter((c) => c.targetRole === role.slug);
    for (const state of ['hot', 'cold']) {
      const knowing = checks.flatMap((c) =>
        c.outcomes.filter((o) => o.synonyms.includes(state)).map((o) => ({ check: c.slug, outcome: o.slug })),
      );
      const only = knowing[0];
      if (only === undefined || knowing.length > 1) continue;
      for (const name of [role.label, ...role.synonyms])
        add(builder, `${name} ${state}`, { kind: 'told', ...only }, QUALITY.told);
    }
  }
}

/** True for an outcome that says of what it speaks: "no reset pulse" of the reset line. */
function namesItsCheck(outcome: string, checkPhrases: readonly string[]): boolean {
  const own = phraseTerms(phraseWords(outcome), false)?.required ?? [];
  if (own.length < 2) return false;
  return checkPhrases.some((p) => {
    const terms = phraseTerms(phraseWords(p), false)?.required ?? [];
    return terms.length > 0 && terms.every((t) => own.includes(t));
  });
}

function* addFixes(builder: Builder, vocabulary: Vocabulary): Steps<void> {
  const roles = new Map(vocabulary.roles.map((r) => [r.slug, r]));
  const shared = new Map<string, number>();
  for (const fix of vocabulary.fixes) shared.set(`${fix.action} ${fix.role}`, (shared.get(`${fix.action} ${fix.role}`) ?? 0) + 1);
  for (const fix of vocabulary.fixes) {
    const target: Target = { kind: 'fix', id: fix.slug };
    for (const phrase of [fix.label, ...fix.synonyms]) addWords(builder, phraseWords(phrase), target, QUALITY.written, true);
    addWords(builder, phraseWords(fix.slug.replaceAll('-', ' ')), target, QUALITY.slug, true);
    const role = roles.get(fix.role);
    const alone = shared.get(`${fix.action} ${fix.role}`) === 1;
    for (const name of role ? [role.label, ...role.synonyms] : []) {
      const terms = phraseTerms(phraseWords(name), true);
      if (terms === null) continue;
      const required = [ACTION_TERMS[fix.action], ...terms.required.filter((t) => t !== ACTION_TERMS[fix.action])];
      insert(builder, { terms: { ...terms, required }, words: [], target, quality: alone ? QUALITY.derived : QUALITY.guessed });
    }
    yield;
  }
}

/** "d0 to d7" also names each line of the range. */
function rangeMembers(phrase: string): string[] {
  const range = /^([a-z])(\d{1,2})(?: to |-)\1(\d{1,2})$/i.exec(phrase.trim());
  if (range === null) return [];
  const [from, to] = [Number(range[2]), Number(range[3])];
  return Array.from({ length: Math.max(0, Math.min(to - from + 1, 32)) }, (_, i) => `${range[1]}${from + i}`);
}

function postingsOf(phrases: readonly Phrase[]): Map<string, { phrase: Phrase; slot: number }[]> {
  const postings = new Map<string, { phrase: Phrase; slot: number }[]>();
  const post = (term: string, entry: { phrase: Phrase; slot: number }) => {
    const list = postings.get(term);
    if (list === undefined) postings.set(term, [entry]);
    else list.push(entry);
  };
  for (const phrase of phrases) {
    for (const [slot, term] of phrase.required.entries()) if (!isNo(term)) post(term, { phrase, slot });
    for (const term of phrase.optional) post(term, { phrase, slot: -1 });
  }
  return postings;
}
