import { randomBytes } from 'node:crypto';

const ALPHABET = 'abcdefghijklmnopqrstuvwxyz234567';

/** Ten bytes as 16 characters of lower-case base 32 (RFC 4648 alphabet). Throws a RangeError for any other length. */
export function caseIdFrom(bytes: Uint8Array): string {
  if (bytes.length !== 10) throw new RangeError('An id takes exactly 10 bytes.');
  return base32(bytes);
}

/** A fresh secret of 20 such characters, a hundred random bits. */
export function randomKey(): string {
  return base32(randomBytes(13)).slice(0, 20);
}

function base32(bytes: Uint8Array): string {
  let id = '';
  let buffer = 0;
  let bits = 0;
  for (const byte of bytes) {
    buffer = (buffer << 8) | byte;
    bits += 8;
    while (bits >= 5) {
      bits -= 5;
      id += ALPHABET[(buffer >>> bits) & 31];
    }
    buffer &= (1 << bits) - 1;
  }
  return id;
}

/** A fresh opaque id from the system's random source. */
export function randomCaseId(): string {
  return caseIdFrom(randomBytes(10));
}
