import type { CaseContent } from '../../schemas/case';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { checksOf, cureOf, listed, named, outcomeNamed } from './case-parts';
import type { Contradiction, ContradictionRule } from './contradictions';

const NOTHING_FOUND = 'no-fault-found';

/** Outcome, cause and cure against each other, and against what the vocabulary says of them. */
export const causeContradictions: ContradictionRule = (words, content) => [
  ...outcomeRules(words, content),
  ...cureElsewhere(words, content),
  ...clearedCauses(words, content),
  ...partsOfOthers(words, content),
  ...hiddenSymptoms(words, content),
];

function outcomeRules(words: VocabularyWords, content: CaseContent): Contradiction[] {
  const cure = cureOf(content);
  const found: Contradiction[] = [];
  const nothing = content.causes.some(({ cause }) => cause === NOTHING_FOUND);
  const add = (kind: Contradiction['kind'], field: string, sentence: string) => found.push({ kind, field, sentence });
  if (content.outcome === 'resolved' && cure === undefined && !nothing) {
    add('outcome-without-cure', 'outcome', 'It ended as resolved, but no attempt in it cured anything.');
  }
  if (content.outcome === 'resolved' && content.causes.length === 0) {
    add('resolved-without-cause', 'causes', 'It ended as resolved, but names no cause.');
  }
  if (cure && (content.outcome === 'unresolved' || content.outcome === 'not-economical')) {
    const how = content.outcome === 'unresolved' ? 'unresolved' : 'not economical';
    add('cure-without-outcome', 'outcome', `Step ${cure.position + 1} cured it, but it ended as ${how}.`);
  }
  if (nothing && (cure || content.causes.length > 1)) {
    const other = cure ? `step ${cure.position + 1} cured it` : 'another cause is named beside it';
    add('nothing-found-but-cured', 'causes', `It says ${named(words, 'causes', NOTHING_FOUND)}, but ${other}.`);
  }
  return found;
}

function cureElsewhere(words: VocabularyWords, content: CaseContent): Contradiction[] {
  const cure = cureOf(content);
  const causes = content.causes.map(({ cause }) => cause).filter((cause) => cause !== NOTHING_FOUND);
  if (!cure || causes.length === 0) return [];
  const addressed = cure.fixes.flatMap(({ fix }) => words.fixes.get(fix)?.addresses ?? []);
  if (addressed.some((cause) => causes.includes(cause))) return [];
  const fixes = listed(cure.fixes.map(({ fix }) => named(words, 'fixes', fix)));
  const named_ = listed(causes.map((cause) => named(words, 'causes', cause)));
  const sentence = `Step ${cure.position + 1} cured it by ${fixes}, which does nothing about the cause it names, ${named_}.`;
  return [{ kind: 'cure-elsewhere', field: `steps.${cure.position}`, sentence }];
}

/** A check that showed what a working unit shows clears the parts that the vocabulary says it clears. */
function clearedCauses(words: VocabularyWords, content: CaseContent): Contradiction[] {
  const end = cureOf(content)?.position ?? content.steps.length;
  return checksOf(content).flatMap((step) => {
    const check = words.checks.get(step.check);
    if (!check || step.position > end || step.outcome !== check.workingOutcome) return [];
    return content.causes.flatMap(({ cause }) => {
      const known = words.causes.get(cause);
      if (!known || !(check.clears ?? []).includes(known.role) || /intermittent/i.test(known.mode)) return [];
      const role = words.roles.get(known.role)?.label ?? known.role;
      const sentence = `Step ${step.position + 1}, ${named(words, 'checks', step.check)}, showed ${outcomeNamed(words, step)}, which clears the ${role}; but the cause is ${named(words, 'causes', cause)}.`;
      return [{ kind: 'cause-cleared' as const, field: `steps.${step.position}`, sentence }];
    });
  });
}

function partsOfOthers(words: VocabularyWords, content: CaseContent): Contradiction[] {
  const place = words.devices.get(content.device);
  const boards = place ? (place.board ? [place.board] : place.model.boards) : [];
  return content.causes.flatMap(({ cause, designators }, i) => {
    const role = words.causes.get(cause)?.role;
    return designators.flatMap((designator) => {
      const parts = boards.flatMap((board) => board.parts.filter((part) => part.designator === designator));
      if (parts.length === 0 || role === undefined || parts.some((part) => part.role === role)) return [];
      const other = words.roles.get(parts[0]?.role ?? '')?.label ?? 'another part';
      const sentence = `${designator} is the ${other} there, not the part that ${named(words, 'causes', cause)} is about.`;
      return [{ kind: 'part-of-another-role' as const, field: `causes.${i}`, sentence }];
    });
  });
}

function hiddenSymptoms(words: VocabularyWords, content: CaseContent): Contradiction[] {
  const present = content.symptoms.filter((s) => s.present).map((s) => s.symptom);
  return present.flatMap((symptom) => {
    const hider = words.symptoms.get(symptom)?.hiddenBy.find((other) => present.includes(other));
    if (hider === undefined) return [];
    const sentence = `${named(words, 'symptoms', symptom)} cannot be seen while there is ${named(words, 'symptoms', hider)}.`;
    return [{ kind: 'symptom-hidden' as const, field: 'symptoms', sentence }];
  });
}
