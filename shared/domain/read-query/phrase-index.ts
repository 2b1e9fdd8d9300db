import type { FixResult } from '../../schemas/case';
import type { Vocabulary } from '../../schemas/vocabulary';
import { ACTION_TERMS, actionWords, RESULT_PHRASES } from './fix-words';
import { buildLexicon, type Lexicon } from './lexicon';
import type { NamedTarget, Phrase, Target } from './phrase';
import { phraseTerms, phraseWords, type PhraseTerms } from './phrase-terms';
import { roleRenamer } from './rename-roles';
import { subjectsOf } from './symptom-subjects';
import { STATE_PHRASES, stateWords } from './state-words';
import { CANNOT_TERM, NO_TERM } from './token';
import { NEGATOR_WORDS, WEAK_WORDS } from './word-classes';

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

type Builder = { byKey: Map<string, Phrase>; known: Map<string, NamedTarget>; words: Map<string, number> };

/** Labels and synonyms as written count fully; slugs and derived phrases a little less, so that written ones win. */
const QUALITY = { written: 1, slug: 0.9, derived: 0.94, guessed: 0.85, told: 1.4 } as const;

/** Builds the index from a vocabulary and the general words of the bench. */
export function buildPhraseIndex(vocabulary: Vocabulary): PhraseIndex {
  const builder: Builder = { byKey: new Map(), known: new Map(), words: new Map() };
  addSymptoms(builder, vocabulary);
  addChecks(builder, vocabulary);
  addFixes(builder, vocabulary);
  addTold(builder, vocabulary);
  addDerivedSymptoms(builder, vocabulary);
  addDerivedChecks(builder, vocabulary);
  for (const role of vocabulary.roles) {
    for (const phrase of [role.label, ...role.synonyms]) add(builder, phrase, { kind: 'role', id: role.slug }, QUALITY.derived);
  }
  for (const [phrase, classes] of Object.entries(STATE_PHRASES)) add(builder, phrase, { kind: 'state', classes }, QUALITY.written);
  for (const [result, phrases] of Object.entries(RESULT_PHRASES) as [FixResult, readonly string[]][]) {
    for (const phrase of phrases) add(builder, phrase, { kind: 'result', result }, QUALITY.written);
  }
  for (const word of benchWords()) if (!builder.words.has(word)) builder.words.set(word, 1);
  const phrases = [...builder.byKey.values()];
  return { phrases, postings: postingsOf(phrases), entries: entriesOf(phrases), contrasts: contrastsOf(vocabulary), characteristic: characteristicTerms(vocabulary), lexicon: buildLexicon(builder.words) };
}

/** General words of five letters and more, so that slips in "missing" or "replaced" are mended too. */
function benchWords(): string[] {
  return [...stateWords(), ...actionWords(), ...NEGATOR_WORDS, ...WEAK_WORDS].filter((w) => w.length >= 5 && /^\p{L}+$/u.test(w));
}

function addSymptoms(builder: Builder, vocabulary: Vocabulary): void {
  for (const symptom of vocabulary.symptoms) {
    const written = [symptom.label, ...symptom.synonyms];
    for (const phrase of written) add(builder, phrase, { kind: 'symptom', id: symptom.slug, value: 'present' }, QUALITY.written);
    for (const phrase of symptom.absentPhrases) add(builder, phrase, { kind: 'symptom', id: symptom.slug, value: 'absent' }, QUALITY.written);
    for (const { words, lack } of subjectsOf(symptom)) {
      addWords(builder, words, { kind: 'subject', id: symptom.slug, lack }, lack === 'good' ? QUALITY.guessed : QUALITY.derived);
    }
  }
}

/** Slugs, and phrases with another name for a part, where no entry writes the same phrase itself. */
function addDerivedSymptoms(builder: Builder, vocabulary: Vocabulary): void {
  const otherNames = roleRenamer(vocabulary.roles);
  for (const symptom of vocabulary.symptoms) {
    const target: Target = { kind: 'symptom', id: symptom.slug, value: 'present' };
    for (const phrase of [symptom.label, ...symptom.synonyms].flatMap((w) => otherNames(w))) add(builder, phrase, target, QUALITY.derived);
    add(builder, symptom.slug.replaceAll('-', ' '), target, QUALITY.slug);
  }
}

function addDerivedChecks(builder: Builder, vocabulary: Vocabulary): void {
  const otherNames = roleRenamer(vocabulary.roles);
  for (const check of vocabulary.checks) {
    const target: Target = { kind: 'check', id: check.slug };
    const written = [check.label, ...check.synonyms];
    for (const phrase of written.flatMap(rangeMembers)) add(builder, phrase, target, QUALITY.derived);
    for (const phrase of written.flatMap((w) => otherNames(w))) add(builder, phrase, target, QUALITY.derived);
    add(builder, check.slug.replaceAll('-', ' '), target, QUALITY.slug);
  }
}

function addChecks(builder: Builder, vocabulary: Vocabulary): void {
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
  }
}

/** A part's name with a heat or cold that only one of its checks knows: "cpu hot" is its temperature, not a general symptom. */
function addTold(builder: Builder, vocabulary: Vocabulary): void {
  for (const role of vocabulary.roles) {
    const checks = vocabulary.checks.filter((c) => c.targetRole === role.slug);
    for (const state of ['hot', 'cold']) {
      const knowing = checks.flatMap((c) => c.outcomes.filter((o) => o.synonyms.includes(state)).map((o) => ({ check: c.slug, outcome: o.slug })));
      const only = knowing[0];
      if (only === undefined || knowing.length > 1) continue;
      for (const name of [role.label, ...role.synonyms]) add(builder, `${name} ${state}`, { kind: 'told', ...only }, QUALITY.told);
    }
  }
}

/** All words of the phrase needed, small ones too: "no reset pulse" is not "no reset". */
function addWhole(builder: Builder, phrase: string, target: Target): void {
  const words = phraseWords(phrase);
  const terms = phraseTerms(words, false);
  if (terms !== null) insert(builder, { terms: { ...terms, required: [...terms.required, ...terms.optional], optional: [] }, words, target, quality: QUALITY.written });
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

function addFixes(builder: Builder, vocabulary: Vocabulary): void {
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
  }
}

function add(builder: Builder, phrase: string, target: Target, quality: number): void {
  addWords(builder, phraseWords(phrase), target, quality);
}

/** "d0 to d7" also names each line of the range. */
function rangeMembers(phrase: string): string[] {
  const range = /^([a-z])(\d{1,2})(?: to |-)\1(\d{1,2})$/i.exec(phrase.trim());
  if (range === null) return [];
  const [from, to] = [Number(range[2]), Number(range[3])];
  return Array.from({ length: Math.max(0, Math.min(to - from + 1, 32)) }, (_, i) => `${range[1]}${from + i}`);
}

function addWords(builder: Builder, words: readonly string[], target: Target, quality: number, asFix = false): void {
  for (const word of words) builder.words.set(word, (builder.words.get(word) ?? 0) + 1);
  const terms = phraseTerms(words, asFix);
  if (terms !== null) insert(builder, { terms, words, target, quality });
}

type Entry = { terms: PhraseTerms; words: readonly string[]; target: Target; quality: number };

function insert(builder: Builder, { terms, words, target, quality }: Entry): void {
  const key = [...terms.required].sort().join(' ') + '|' + [...terms.optional].sort().join(' ');
  const phrase: Phrase = builder.byKey.get(key) ?? { id: builder.byKey.size, ...terms, noSlot: terms.required.findIndex(isNo), droppable: droppableSlots(terms), targets: [] };
  builder.byKey.set(key, phrase);
  const name = `${key} > ${Object.values(target).join(' ')}`;
  const known = builder.known.get(name);
  if (known !== undefined) {
    for (const word of words) known.words.add(word);
    known.quality = Math.max(known.quality, quality);
    return;
  }
  const derived = quality < QUALITY.written && phrase.targets.some((t) => t.target.kind === target.kind && t.quality >= QUALITY.written);
  if (derived && target.kind !== 'subject' && target.kind !== 'outcome') return;
  const named: NamedTarget = { target, quality, words: new Set(words) };
  builder.known.set(name, named);
  phrase.targets.push(named);
}

function characteristicTerms(vocabulary: Vocabulary): Map<string, Set<string>> {
  const characteristic = new Map<string, Set<string>>();
  for (const symptom of vocabulary.symptoms) {
    const phrases = [symptom.label, ...symptom.synonyms].map((p) => new Set(phraseTerms(phraseWords(p), false)?.required ?? []));
    for (const term of new Set(phrases.flatMap((p) => [...p]))) {
      if (phrases.filter((p) => p.has(term)).length * 2 < phrases.length) continue;
      characteristic.set(term, (characteristic.get(term) ?? new Set<string>()).add(symptom.slug));
    }
  }
  return characteristic;
}

function contrastsOf(vocabulary: Vocabulary): { before: string[]; after: string[] }[] {
  const phrases = [...vocabulary.symptoms.flatMap((s) => [s.label, ...s.synonyms]), ...Object.values(RESULT_PHRASES).flat()];
  return phrases.flatMap((phrase) => {
    const words = phraseWords(phrase);
    const at = words.indexOf('but');
    if (at < 1) return [];
    const before = phraseTerms(words.slice(0, at), false)?.required ?? [];
    const after = phraseTerms(words.slice(at + 1), false)?.required ?? [];
    return before.length > 0 && after.length > 0 ? [{ before, after }] : [];
  });
}

function entriesOf(phrases: readonly Phrase[]): Map<string, Map<string, Target>> {
  const entries = new Map<string, Map<string, Target>>();
  for (const phrase of phrases) {
    for (const { target, quality } of phrase.targets) {
      const counts = target.kind === 'check' || (target.kind === 'symptom' && target.value === 'present');
      if (!counts || quality < QUALITY.written) continue;
      for (const term of phrase.required) {
        const known = entries.get(term) ?? new Map<string, Target>();
        known.set(`${target.kind} ${target.id}`, target);
        entries.set(term, known);
      }
    }
  }
  return entries;
}

function droppableSlots({ required, small }: PhraseTerms): number {
  return required.reduce((bits, term, slot) => (small.includes(term) ? bits | (1 << slot) : bits), 0);
}

function isNo(term: string): boolean {
  return term === NO_TERM || term === CANNOT_TERM;
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
