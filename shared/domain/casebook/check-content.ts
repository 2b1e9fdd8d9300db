import type { CaseContent, CaseStep } from '../../schemas/case';
import type { VocabularyWords } from './vocabulary-words';

/** What is wrong with one field of a case; `field` is its path, such as `steps.2.outcome`. */
export type ContentProblem = { field: string; reason: string };

/**
 * What the schema cannot know: that a case names only devices, symptoms, checks with their outcomes, fixes and causes
 * that exist, and says nothing twice. Empty where all is well.
 */
export function checkContent(words: VocabularyWords, content: CaseContent): ContentProblem[] {
  const problems: ContentProblem[] = [];
  if (!words.devices.has(content.device)) problems.push(unknown('device', 'device', content.device));
  const seen = new Set<string>();
  content.symptoms.forEach(({ symptom }, i) => {
    const field = `symptoms.${i}.symptom`;
    if (!words.symptoms.has(symptom)) problems.push(unknown(field, 'symptom', symptom));
    if (seen.has(symptom)) problems.push({ field, reason: `The symptom "${symptom}" is listed twice. List it once.` });
    seen.add(symptom);
  });
  content.steps.forEach((step, i) => problems.push(...checkStep(words, step, `steps.${i}`)));
  const causes = new Set<string>();
  content.causes.forEach(({ cause }, i) => {
    const field = `causes.${i}.cause`;
    if (!words.causes.has(cause)) problems.push(unknown(field, 'cause', cause));
    if (causes.has(cause))
      problems.push({ field, reason: `The cause "${cause}" is named twice. Name it once, with all its designators.` });
    causes.add(cause);
  });
  content.afterRepairChecks.forEach((check, i) => {
    if (!words.checks.has(check)) problems.push(unknown(`afterRepairChecks.${i}`, 'check', check));
  });
  return problems;
}

function checkStep(words: VocabularyWords, step: CaseStep, at: string): ContentProblem[] {
  if (step.kind === 'fix') {
    return step.fixes.flatMap(({ fix }, i) => (words.fixes.has(fix) ? [] : [unknown(`${at}.fixes.${i}.fix`, 'fix', fix)]));
  }
  const problems: ContentProblem[] = [];
  const check = words.checks.get(step.check);
  if (!check) problems.push(unknown(`${at}.check`, 'check', step.check));
  else if (!check.outcomes.some((o) => o.slug === step.outcome)) {
    const known = check.outcomes.map((o) => o.slug).join(', ');
    problems.push({ field: `${at}.outcome`, reason: `"${step.check}" has no outcome "${step.outcome}". It has: ${known}.` });
  }
  if ((step.value === null) !== (step.unit === null)) {
    problems.push({ field: `${at}.unit`, reason: 'A number needs a unit, and a unit a number.' });
  }
  return problems;
}

function unknown(field: string, what: string, slug: string): ContentProblem {
  return { field, reason: `There is no ${what} "${slug}" in the ${what === 'device' ? 'catalogue' : 'vocabulary'}.` };
}
