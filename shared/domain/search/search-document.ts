import type { CaseRecord } from '../../schemas/case';
import { NO_PROOF } from '../../schemas/search';
import type { VocabularyWords } from '../casebook/vocabulary-words';

/**
 * A case as the full text holds it: texts to search in, most telling first, and values to narrow by. Both engines
 * index this very thing.
 */
export type SearchDocument = {
  id: string;
  /** Labels of the symptoms that were there. */
  symptoms: string;
  /** Labels of the causes, with the designators of the parts. */
  causes: string;
  /** Model, board revision, maker, and other ways to write the model. */
  device: string;
  /** Checks with their outcomes and fixes with their results, as they are called. */
  steps: string;
  /** What symptoms, causes and their parts are called too. */
  synonyms: string;
  narrative: string;
  category: string;
  /** Slugs of the model and, where it is known, of the board revision. */
  deviceSlugs: string[];
  symptomSlugs: string[];
  causeSlugs: string[];
  outcome: string;
  proof: string;
  month: string;
  year: string;
  photos: 'yes' | 'no';
};

/** Texts of a document that are searched, and how much a word counts there. */
export const FIELD_WEIGHTS = {
  symptoms: 6,
  causes: 5,
  device: 4,
  steps: 2,
  synonyms: 1,
  narrative: 1.5,
} as const satisfies Partial<Record<keyof SearchDocument, number>>;
export type SearchField = keyof typeof FIELD_WEIGHTS;
export const SEARCH_FIELDS = Object.keys(FIELD_WEIGHTS) as SearchField[];

/** Changes whenever the same case would make another document, so that an index made by an older version is made anew. */
export const DOCUMENT_VERSION = 1;

/**
 * Private-use characters are kept out of every text: the engines mark with two of them what matched. Control characters
 * become blanks.
 */
export const HIGHLIGHT_OPEN = '\uE000';
export const HIGHLIGHT_CLOSE = '\uE001';

/** The document of a case. Names that the vocabulary lacks stand as their slugs. */
export function searchDocument(words: VocabularyWords, { id, content }: CaseRecord, photos: boolean): SearchDocument {
  const place = words.devices.get(content.device);
  const present = content.symptoms.filter((s) => s.present).map((s) => s.symptom);
  const causes = content.causes.map((c) => c.cause);
  return {
    id,
    symptoms: lines(present.map((slug) => words.symptoms.get(slug)?.label ?? slug)),
    causes: lines(content.causes.map((c) => [words.causes.get(c.cause)?.label ?? c.cause, ...c.designators].join(' '))),
    device: lines(place ? [place.label, place.model.maker.name, ...place.model.synonyms] : [content.device]),
    steps: lines(content.steps.flatMap((step) => stepWords(words, step))),
    synonyms: lines([...new Set([...present.flatMap((slug) => words.symptoms.get(slug)?.synonyms ?? []), ...causes.flatMap((slug) => causeSynonyms(words, slug))])]),
    narrative: clean(content.narrative),
    category: place?.model.category ?? '',
    deviceSlugs: place ? [...new Set([place.model.slug, place.slug])] : [content.device],
    symptomSlugs: [...new Set(present)],
    causeSlugs: [...new Set(causes)],
    outcome: content.outcome,
    proof: content.proof ?? NO_PROOF,
    month: content.month,
    year: content.month.slice(0, 4),
    photos: photos ? 'yes' : 'no',
  };
}

function stepWords(words: VocabularyWords, step: CaseRecord['content']['steps'][number]): string[] {
  if (step.kind === 'fix') return step.fixes.map(({ fix, designator }) => `${words.fixes.get(fix)?.label ?? fix} ${designator ?? ''}`);
  const check = words.checks.get(step.check);
  const outcome = check?.outcomes.find((o) => o.slug === step.outcome)?.label ?? step.outcome;
  return [`${check?.label ?? step.check} ${outcome} ${step.designator ?? ''}`];
}

function causeSynonyms(words: VocabularyWords, slug: string): string[] {
  const cause = words.causes.get(slug);
  return cause ? [...cause.synonyms, ...(words.roles.get(cause.role)?.synonyms ?? [])] : [];
}

function lines(parts: readonly string[]): string {
  return clean(parts.map((part) => part.trim()).join('\n'));
}

function clean(text: string): string {
  return text.normalize('NFKC').replaceAll(/[\p{Co}\p{Cn}]/gu, '').replaceAll(/[^\P{Cc}\n]/gu, ' ');
}
