import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { LogRow } from '../../repositories/log-repository';

/** What stands for the hash before the first entry. */
export const NO_HASH = '0'.repeat(64);

/** Canonical JSON after RFC 8785. Throws for what JSON cannot hold (NaN, a circle, `undefined`). */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('This value has no JSON form.');
  return text;
}

/** SHA-256, in hexadecimal, over the canonical JSON of everything in the entry but its own hash. */
export function entryHash(entry: Omit<LogRow, 'hash'>): string {
  const { seq, month, time, kind, subjectKind, subject, actor, detail, prevHash } = entry;
  const text = canonicalText({ seq, month, time, kind, subjectKind, subject, actor, detail, prevHash });
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
