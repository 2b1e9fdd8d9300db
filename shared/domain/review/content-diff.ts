import { diffArrays, diffWordsWithSpace } from 'diff';
import type { CaseContent, CaseStep } from '../../schemas/case';
import { FIX_RESULT_LABELS, type VocabularyWords } from '../casebook/vocabulary-words';

/** A stretch that both versions have, that only the earlier has, or that only the later has. */
export type DiffPart = { state: 'same' | 'out' | 'in'; text: string };
/** One part of a case that differs: whole lines for what is structured, words for the story. */
export type DiffSection = { name: string; parts: DiffPart[] };

/** What differs between two versions of a case, in the order of the form; empty where nothing does. */
export function contentDiff(words: VocabularyWords, before: CaseContent, after: CaseContent): DiffSection[] {
  const then = linesOf(words, before);
  const now = linesOf(words, after);
  const sections = Object.keys(then).map((name) => ({
    name,
    parts: diffArrays(then[name] ?? [], now[name] ?? []).flatMap((part) =>
      part.value.map((text): DiffPart => ({ state: stateOf(part), text })),
    ),
  }));
  const story = diffWordsWithSpace(before.narrative, after.narrative).map((part): DiffPart => ({ state: stateOf(part), text: part.value }));
  return [...sections, { name: 'In their words', parts: story }].filter(({ parts }) => parts.some((part) => part.state !== 'same'));
}

const stateOf = ({ added, removed }: { added?: boolean; removed?: boolean }): DiffPart['state'] =>
  added ? 'in' : removed ? 'out' : 'same';

function linesOf(words: VocabularyWords, content: CaseContent): Record<string, string[]> {
  const label = (kind: 'symptoms' | 'checks' | 'causes' | 'fixes', slug: string) => words[kind].get(slug)?.label ?? slug;
  const part = (designators: readonly (string | null)[]) => {
    const named = designators.filter((designator) => designator !== null);
    return named.length > 0 ? ` (${named.join(', ')})` : '';
  };
  return {
    'The unit': [`${words.devices.get(content.device)?.label ?? content.device}, ${content.month}`],
    Symptoms: [
      ...content.symptoms.map((s) => `${label('symptoms', s.symptom)}: ${s.present ? 'present' : 'absent'}`),
      content.symptomsComplete ? 'That was all there was to see.' : 'More may have been there to see.',
    ],
    'Checks and fixes': content.steps.map((step) => stepLine(words, step, part)),
    'Readings at pins': content.readings.map((r) => `${r.designator} pin ${r.pin}: ${r.value === null ? r.state : `${r.value} ${r.unit}`}`),
    'What it was': [
      ...content.causes.map((c) => `Cause: ${label('causes', c.cause)}${part(c.designators)}`),
      `Proved: ${content.proof ?? 'not'}${content.provedByStep === null ? '' : `, in step ${content.provedByStep + 1}`}`,
      `Outcome: ${content.outcome}`,
    ],
    'After the repair': [
      ...content.afterRepairChecks.map((check) => label('checks', check)),
      content.soakMinutes === null ? 'No soak time' : `Left running for ${content.soakMinutes} min`,
    ],
  };
}

function stepLine(words: VocabularyWords, step: CaseStep, part: (designators: (string | null)[]) => string): string {
  if (step.kind === 'fix') {
    const fixes = step.fixes.map(({ fix, designator }) => `${words.fixes.get(fix)?.label ?? fix}${part([designator])}`);
    return `Fix: ${fixes.join(' and ')}: ${FIX_RESULT_LABELS[step.result]}`;
  }
  const check = words.checks.get(step.check);
  const outcome = check?.outcomes.find((o) => o.slug === step.outcome)?.label ?? step.outcome;
  const reading = step.value === null ? '' : `, ${step.value} ${step.unit}`;
  return `Check: ${check?.label ?? step.check}${part([step.designator])}: ${outcome}${reading}`;
}
