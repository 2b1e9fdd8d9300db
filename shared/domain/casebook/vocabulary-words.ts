import { FIX_RESULTS, type FixResult } from '../../schemas/case';
import type { Board, DeviceCatalogue, DeviceModel } from '../../schemas/device';
import type { Finding } from '../../schemas/finding';
import type { Cause, Check, Fix, Role, Symptom, Vocabulary } from '../../schemas/vocabulary';
import { NO_ALIASES, type WordAliases } from '../words/word-aliases';
import { boardLabel } from './board-label';

export const FIX_RESULT_LABELS: Record<FixResult, string> = {
  'no-change': 'no change',
  'symptom-changed': 'symptom changed',
  partly: 'partly cured',
  cured: 'cured',
  'made-worse': 'made worse',
};

/** A device slug resolved: a model, or one board revision of it. */
export type DevicePlace = { slug: string; label: string; level: 'board' | 'model'; model: DeviceModel; board: Board | null };

/** Vocabulary and catalogue by slug, with the words to show them. */
export type VocabularyWords = {
  roles: ReadonlyMap<string, Role>;
  symptoms: ReadonlyMap<string, Symptom>;
  checks: ReadonlyMap<string, Check>;
  causes: ReadonlyMap<string, Cause>;
  fixes: ReadonlyMap<string, Fix>;
  devices: ReadonlyMap<string, DevicePlace>;
  /** What merged entries go by now. */
  aliases: WordAliases;
};

const bySlug = <T extends { slug: string }>(entries: readonly T[]) => new Map(entries.map((entry) => [entry.slug, entry]));

/** Indexes vocabulary and catalogue by slug. */
export function vocabularyWords(
  vocabulary: Vocabulary,
  catalogue: DeviceCatalogue,
  aliases: WordAliases = NO_ALIASES,
): VocabularyWords {
  const devices = new Map<string, DevicePlace>();
  for (const model of catalogue.models) {
    devices.set(model.slug, { slug: model.slug, label: model.name, level: 'model', model, board: null });
    for (const board of model.boards) {
      devices.set(board.slug, { slug: board.slug, label: boardLabel(model, board), level: 'board', model, board });
    }
  }
  return {
    roles: bySlug(vocabulary.roles),
    symptoms: bySlug(vocabulary.symptoms),
    checks: bySlug(vocabulary.checks),
    causes: bySlug(vocabulary.causes),
    fixes: bySlug(vocabulary.fixes),
    devices,
    aliases,
  };
}

/** Whether the vocabulary knows what the finding is about and the value it has. */
export function isKnownFinding(words: VocabularyWords, finding: Finding): boolean {
  if (finding.kind === 'symptom') return words.symptoms.has(finding.id);
  if (finding.kind === 'fix') return words.fixes.has(finding.id);
  return words.checks.get(finding.id)?.outcomes.some((o) => o.slug === finding.value) ?? false;
}

/** What a finding is about, in words; its slug where the vocabulary does not know it. */
export function findingLabel(words: VocabularyWords, finding: Pick<Finding, 'kind' | 'id'>): string {
  const entries = finding.kind === 'symptom' ? words.symptoms : finding.kind === 'check' ? words.checks : words.fixes;
  return entries.get(finding.id)?.label ?? finding.id;
}

/** A finding's value, in words. */
export function findingValueLabel(words: VocabularyWords, finding: Finding): string {
  return valuesOf(words, finding).find((v) => v.value === finding.value)?.label ?? finding.value;
}

/** Every value that a finding about this can have, in the order of the vocabulary. */
export function valuesOf(words: VocabularyWords, key: Pick<Finding, 'kind' | 'id'>): { value: string; label: string }[] {
  if (key.kind === 'symptom') return ['present', 'absent'].map((value) => ({ value, label: value }));
  if (key.kind === 'fix') return FIX_RESULTS.map((value) => ({ value, label: FIX_RESULT_LABELS[value] }));
  return (words.checks.get(key.id)?.outcomes ?? []).map((o) => ({ value: o.slug, label: o.label }));
}
