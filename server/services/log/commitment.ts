import { createHmac, randomBytes } from 'node:crypto';

/** A fresh key: 32 random bytes, in hexadecimal. */
export const newKey = (): string => randomBytes(32).toString('hex');

function hmac(key: string, text: string): string {
  return createHmac('sha256', Buffer.from(key, 'hex')).update(text, 'utf8').digest('hex');
}

/**
 * Commitment to a person in one place of one entry: HMAC-SHA-256 (RFC 2104) under the person's key, in hexadecimal. The
 * entry's number is part of it, so that two entries by one person have nothing in common for who lacks the key.
 */
export function personCommitment(key: string, place: 'actor' | 'subject', seq: number, userId: string): string {
  return hmac(key, `${place}:${seq}:${userId}`);
}

/** Commitment to something that is no person: the same in every entry about it. */
export function subjectCommitment(key: string, kind: string, id: string): string {
  return hmac(key, `${kind}:${id}`);
}
