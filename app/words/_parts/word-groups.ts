import type { Finding } from '../../../shared/schemas/finding';
import type { Area } from '../../../shared/schemas/terms';
import type { Vocabulary } from '../../../shared/schemas/vocabulary';

export type Word = { id: string; label: string; meaning: string; findings: { finding: Finding; label: string }[] };
export type WordGroup = { head: string; words: Word[] };

/** The symptoms and checks of one area, and the fixes that go for the parts which those checks look at. */
export function wordGroups(vocabulary: Vocabulary, area: Area): WordGroup[] {
  const checks = vocabulary.checks.filter((check) => check.area === area);
  const roles = new Set(checks.map((check) => check.targetRole));
  return [
    {
      head: 'Symptoms',
      words: vocabulary.symptoms
        .filter((symptom) => symptom.area === area)
        .map((symptom) => ({
          id: symptom.slug,
          label: symptom.label,
          meaning: symptom.meaning,
          findings: (['present', 'absent'] as const).map((value) => ({
            finding: { kind: 'symptom', id: symptom.slug, value },
            label: value,
          })),
        })),
    },
    {
      head: 'Checks',
      words: checks.map((check) => ({
        id: check.slug,
        label: check.label,
        meaning: check.meaning,
        findings: check.outcomes.map((outcome) => ({
          finding: { kind: 'check', id: check.slug, value: outcome.slug },
          label: outcome.label,
        })),
      })),
    },
    {
      head: 'Fixes tried',
      words: vocabulary.fixes
        .filter((fix) => roles.has(fix.role))
        .map((fix) => ({
          id: fix.slug,
          label: fix.label,
          meaning: fix.meaning,
          findings: [{ finding: { kind: 'fix', id: fix.slug, value: 'no-change' }, label: 'no change' }],
        })),
    },
  ];
}
