import { findingSchema, type Finding } from '../../shared/schemas/finding';
import type { FindingKey } from '../../shared/schemas/question';

/** A finding as one word of the address: `check.clock-at-processor.pulsing`. Slugs never hold a full stop. */
export function findingToCode(finding: Finding): string {
  return `${finding.kind}.${finding.id}.${finding.value}`;
}

/** The finding that a word of the address stands for, or null where it stands for none. */
export function findingFromCode(code: string): Finding | null {
  const [kind, id, value, ...rest] = code.split('.');
  if (rest.length > 0) return null;
  const parsed = findingSchema.safeParse({ kind, id, value });
  return parsed.success ? parsed.data : null;
}

/** `check.clock-at-processor`: the finding without its value. */
export function keyToCode(key: FindingKey): string {
  return `${key.kind}.${key.id}`;
}

/** The key that a word of the address stands for, or null where it stands for none. */
export function keyFromCode(code: string): FindingKey | null {
  const [kind, id, ...rest] = code.split('.');
  if (rest.length > 0) return null;
  // Any value that is legal for the kind will do: only kind and id are kept.
  const value = kind === 'symptom' ? 'present' : kind === 'fix' ? 'no-change' : 'any';
  const parsed = findingSchema.safeParse({ kind, id, value });
  return parsed.success ? { kind: parsed.data.kind, id: parsed.data.id } : null;
}

/** Whether two findings, or keys, are about the same thing. */
export function sameKey(a: FindingKey, b: FindingKey): boolean {
  return a.kind === b.kind && a.id === b.id;
}
