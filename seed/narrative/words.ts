import type { CaseStep, FixResult } from '../../shared/schemas/case';
import type { Cause, Check, Fix, Vocabulary } from '../../shared/schemas/vocabulary';
import { pick } from '../random';
import type { Random } from '../world';
import { expand, joined } from './expand';
import { SYMPTOM_CLAUSES } from './symptom-clauses';

/** Looks a vocabulary up by slug. */
export type Lexicon = {
  readonly check: (slug: string) => Check;
  readonly fix: (slug: string) => Fix;
  readonly cause: (slug: string) => Cause;
  readonly role: (slug: string) => string;
  readonly symptomNames: (slug: string) => readonly string[];
};

export function createLexicon(vocabulary: Vocabulary): Lexicon {
  const finder = <T extends { slug: string }>(entries: readonly T[]) => {
    const map = new Map(entries.map((entry) => [entry.slug, entry]));
    return (slug: string): T => {
      const entry = map.get(slug);
      if (!entry) throw new Error(`The vocabulary has no ${slug}.`);
      return entry;
    };
  };
  const symptom = finder(vocabulary.symptoms);
  const role = finder(vocabulary.roles);
  return {
    check: finder(vocabulary.checks),
    fix: finder(vocabulary.fixes),
    cause: finder(vocabulary.causes),
    role: (slug) => lower(role(slug).label),
    symptomNames: (slug) => [lower(symptom(slug).label), ...symptom(slug).synonyms],
  };
}

/** Lower case at the front, unless the word is an abbreviation or a number comes first. */
export function lower(text: string): string {
  const first = text.split(' ')[0] ?? '';
  return /[A-Z]/.test(first.slice(1)) || /[0-9]/.test(first) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}

/** A symptom as a clause. */
export function symptomClause(random: Random, slug: string, lexicon: Lexicon): string {
  return pick(random, SYMPTOM_CLAUSES[slug] ?? lexicon.symptomNames(slug));
}

/** A symptom as one would note it down. */
export function symptomNote(random: Random, slug: string, lexicon: Lexicon): string {
  return pick(random, lexicon.symptomNames(slug).slice(0, 5));
}

const VERB =
  /^(wiggled|moved|swapped|cleaned|looked|lifted|pressed|turned|pushed|checked|compared|reseated|set|tried|stripped|split)\b/;

/** What was looked at, as a noun. */
export function checkNoun(random: Random, check: Check): string {
  const nouns = check.synonyms.slice(0, 4).filter((text) => text.length > 3 && !VERB.test(text));
  return pick(random, [lower(check.label), ...nouns]);
}

/** What it showed, number included where one was written down. */
export function outcomeWords(random: Random, step: Extract<CaseStep, { kind: 'check' }>, check: Check): string {
  const outcome = check.outcomes.find((each) => each.slug === step.outcome);
  const words = pick(random, [lower(outcome?.label ?? step.outcome), ...(outcome?.synonyms.slice(0, 3) ?? [])]);
  if (step.value === null) return words;
  const number = `${step.value} ${step.unit === 'Ohm' ? 'ohm' : step.unit}`;
  return expand(random, '{<n>|<n>, <w>|<w> at <n>|<n> (<w>)}', { n: number, w: words });
}

const PAST: Readonly<Record<string, string>> = {
  set: 'set',
  bend: 'bent',
  have: 'had',
  take: 'took',
  leave: 'left',
  use: 'used',
  retune: 'retuned',
  swap: 'swapped',
  free: 'freed',
  repair: 'repaired',
  bypass: 'bypassed',
};

/** A fix in the past tense, without who did it: "replaced the crystal", "fitted a new regulator". */
export function fixDone(random: Random, fix: Fix): string {
  const told = fix.synonyms.flatMap((text) => {
    if (/^[a-z]+ed\b/.test(text) || /^(bent|set|changed) /.test(text)) return /^[a-z]+ed$/.test(text) ? [] : [text];
    if (!text.startsWith('new ')) return [];
    const plural = /(?:[^s]s|parts)$/.test(text);
    return [expand(random, `{fitted|put in|soldered in} ${plural ? text : `a ${text}`}`)].map((t) =>
      fix.stage < 3 ? t.replace('soldered in', 'fitted') : t,
    );
  });
  const [verb = '', ...rest] = lower(fix.label).split(' ');
  const past =
    PAST[verb] ?? (verb.endsWith('e') ? `${verb}d` : /[^aeiou]y$/.test(verb) ? `${verb.slice(0, -1)}ied` : `${verb}ed`);
  const plain = `${past} ${rest.join(' ')}`
    .replace(/ or (replace|select)\b/, '')
    .replace(/^(cleaned|freed|aligned) and (\w+?)e?\b(?= the)/, '$1');
  return pick(random, [plain, ...told]);
}

/** All fixes of one attempt. */
export function attemptDone(random: Random, step: Extract<CaseStep, { kind: 'fix' }>, lexicon: Lexicon): string {
  return joined(
    step.fixes.map(({ fix, designator }) => {
      const done = fixDone(random, lexicon.fix(fix));
      return designator === null ? done : expand(random, `${done} {(<d>)|(<d>)|, <d>|at <d>}`, { d: designator });
    }),
    pick(random, ['and', 'and', 'and also', 'plus']),
  );
}

const RESULTS: Readonly<Record<FixResult, string>> = {
  'no-change':
    '{no change|no difference|nothing changed|same fault|exactly the same|no luck|that was not it|no joy|still the same|did nothing for it}',
  'symptom-changed':
    '{the fault changed but did not go|different symptom now, still not right|it behaved differently, not better|now it failed in another way}',
  partly: '{better, but not right|some improvement|half cured|it helped a bit|improved, not gone}',
  cured:
    '{that was it|fixed|all good|works|came straight back to life|cured|working again|sorted|and it ran|that did it|problem gone}',
  'made-worse': '{worse than before|that made it worse|oh dear, worse|if anything worse}',
};

export function resultWords(random: Random, result: FixResult): string {
  return expand(random, RESULTS[result]);
}

/** The cause as a noun, with or without its article as the word wants it. */
export function causeNoun(random: Random, cause: Cause, lexicon: Lexicon): string {
  const role = lexicon.role(cause.role);
  const bare = ['solder joint', 'circuit trace', 'trace', 'IC socket', 'decoupling capacitor', 'filter capacitor', 'bus buffer'];
  const article = bare.includes(role) ? (/^[aeiouI]/.test(role) ? 'an' : 'a') : 'the';
  return pick(random, [
    `${article} ${role} (${cause.mode})`,
    `${article} ${role}: ${cause.mode}`,
    causeName(random, cause),
    causeName(random, cause),
  ]);
}

/** The cause as a note. */
export function causeName(random: Random, cause: Cause): string {
  return pick(random, [lower(cause.label), ...cause.synonyms.slice(0, 3)]);
}
