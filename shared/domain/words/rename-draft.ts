import type { DraftDocument } from '../../schemas/submission';
import type { WordKind } from '../../schemas/word-edit';
import { currentSlug, type WordAliases } from './word-aliases';

/** A form in the words that the vocabulary has now, so that one left open over a merge can still be sent. */
export function renameDraft(aliases: WordAliases, draft: DraftDocument): DraftDocument {
  const now = (kind: WordKind) => (slug: string) => (slug === '' ? slug : currentSlug(aliases, kind, slug));
  return {
    ...draft,
    symptoms: once(
      draft.symptoms.map((row) => ({ ...row, symptom: now('symptom')(row.symptom) })),
      (row) => row.symptom,
    ),
    steps: draft.steps.map((step) =>
      step.kind === 'check'
        ? { ...step, check: now('check')(step.check) }
        : { ...step, fixes: step.fixes.map((fix) => ({ ...fix, fix: now('fix')(fix.fix) })) },
    ),
    causes: once(
      draft.causes.map((row) => ({ ...row, cause: now('cause')(row.cause) })),
      (row) => row.cause,
    ),
    afterRepairChecks: once(draft.afterRepairChecks.map(now('check')), (slug) => slug),
  };
}

/** The first row of each slug. */
function once<T>(rows: readonly T[], slug: (row: T) => string): T[] {
  const seen = new Set<string>();
  return rows.filter((row) => {
    if (seen.has(slug(row))) return false;
    seen.add(slug(row));
    return true;
  });
}
