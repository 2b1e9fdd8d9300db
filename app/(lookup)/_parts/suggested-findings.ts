import { FIX_RESULTS } from '../../../shared/schemas/case';
import type { Suggestion } from '../../../shared/schemas/case-view';
import { type Finding, findingSchema } from '../../../shared/schemas/finding';

/** One finding that can be added with a press: `Clock at the processor: pulsing`. */
export type SuggestedFinding = { finding: Finding; label: string };

/**
 * Vocabulary entries spread out into the findings that they can be, in their order: a symptom present or absent, a
 * check with each outcome, a fix tried without change. Where `filter` is given, those whose label holds that word.
 */
export function suggestedFindings(entries: readonly Suggestion[], filter = ''): SuggestedFinding[] {
  const spread = entries.flatMap((entry) =>
    entry.values
      .filter((v) => entry.kind !== 'fix' || v.value === FIX_RESULTS[0])
      .flatMap((v) => {
        const parsed = findingSchema.safeParse({ kind: entry.kind, id: entry.id, value: v.value });
        return parsed.success ? [{ finding: parsed.data, label: `${entry.label}: ${v.label}` }] : [];
      }),
  );
  return spread.filter((option) => option.label.toLowerCase().includes(filter.toLowerCase()));
}
