import type { DraftDocument } from '../../schemas/submission';
import type { WordKind } from '../../schemas/word-edit';
import { currentSlug, type WordAliases } from './word-aliases';

/** A form in the words that the vocabulary has now, so that one left open over a merge can still be sent. */
export function renameDraft(aliases: WordAliases, draft: DraftDocument): DraftDocument {
  const now = (kind: WordKind) => (slug: string) => (slug === '' ? slug : currentSlug(aliases, kind, slug));
  return {
    ...draft,
    symptoms: renameRows(draft.symptoms, 'symptom', now('symptom')),
    steps: draft.steps.map((step) =>
      step.kind === 'check'
        ? { ...step, check: now('check')(step.check) }
        : { ...step, fixes: step.fixes.map((fix) => ({ ...fix, fix: now('fix')(fix.fix) })) },
    ),
    causes: renameRows(draft.causes, 'cause', now('cause')),
    afterRepairChecks: renameRows(
      draft.afterRepairChecks.map((check) => ({ check })),
      'check',
      now('check'),
    ).map(({ check }) => check),
  };
}

/**
 * Rows under the slugs of now. Where a merge made two rows the same, the first stays; a row that somebody entered twice
 * stays twice, for the form to say so.
 */
function renameRows<K extends string, T extends Record<K, string>>(rows: readonly T[], key: K, now: (slug: string) => string): T[] {
  const before = new Map<string, string>();
  return rows.flatMap((row) => {
    const slug = now(row[key]);
    const first = before.get(slug);
    if (first !== undefined && first !== row[key]) return [];
    before.set(slug, row[key]);
    return [{ ...row, [key]: slug }];
  });
}
