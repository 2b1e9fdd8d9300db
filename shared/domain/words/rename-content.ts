import type { CaseContent, CaseStep } from '../../schemas/case';
import type { Question } from '../../schemas/question';
import { currentSlug, type WordAliases } from './word-aliases';

/**
 * A case in the words that the vocabulary has now: merged entries stand under the entry that they were merged into. A case
 * that named both names one: a symptom seen under either name is present, a cause has the designators of both.
 */
export function renameContent(aliases: WordAliases, content: CaseContent): CaseContent {
  if (!names(aliases, content)) return content;
  const present = new Map<string, boolean>();
  for (const { symptom, present: seen } of content.symptoms) {
    const slug = currentSlug(aliases, 'symptom', symptom);
    present.set(slug, seen || (present.get(slug) ?? false));
  }
  const causes = new Map<string, string[]>();
  for (const { cause, designators } of content.causes) {
    const slug = currentSlug(aliases, 'cause', cause);
    causes.set(slug, [...new Set([...(causes.get(slug) ?? []), ...designators])]);
  }
  return {
    ...content,
    symptoms: [...present].map(([symptom, seen]) => ({ symptom, present: seen })),
    steps: content.steps.map((step) => renameStep(aliases, step)),
    causes: [...causes].map(([cause, designators]) => ({ cause, designators })),
    afterRepairChecks: [...new Set(content.afterRepairChecks.map((slug) => currentSlug(aliases, 'check', slug)))],
  };
}

/** A question in the words that the vocabulary has now: an address from before a merge asks the same. */
export function renameQuestion(aliases: WordAliases, question: Question): Question {
  return {
    ...question,
    set: question.set.map((finding) => ({ ...finding, id: currentSlug(aliases, finding.kind, finding.id) })),
    without: question.without.map((key) => ({ ...key, id: currentSlug(aliases, key.kind, key.id) })),
    why: question.why === null ? null : currentSlug(aliases, 'cause', question.why),
  };
}

function renameStep(aliases: WordAliases, step: CaseStep): CaseStep {
  if (step.kind === 'check') return { ...step, check: currentSlug(aliases, 'check', step.check) };
  const fixes = new Map<string, (typeof step.fixes)[number]>();
  for (const { fix, designator } of step.fixes) {
    const slug = currentSlug(aliases, 'fix', fix);
    const key = `${slug} ${designator ?? ''}`;
    if (!fixes.has(key)) fixes.set(key, { fix: slug, designator });
  }
  return { ...step, fixes: [...fixes.values()] };
}

/** Whether a case names anything that was merged. Most do not, and stay as they are. */
function names(aliases: WordAliases, { symptoms, steps, causes, afterRepairChecks }: CaseContent): boolean {
  return (
    symptoms.some(({ symptom }) => aliases.symptom.has(symptom)) ||
    causes.some(({ cause }) => aliases.cause.has(cause)) ||
    afterRepairChecks.some((check) => aliases.check.has(check)) ||
    steps.some((step) =>
      step.kind === 'check' ? aliases.check.has(step.check) : step.fixes.some(({ fix }) => aliases.fix.has(fix)),
    )
  );
}
