import type { RecordKey } from '../../stats/record-keys';

/** The alphabet of ids in the order of their letters as text. */
const LETTERS = '234567abcdefghijklmnopqrstuvwxyz';
const LENGTHS = [6, 6, 4] as const;

/**
 * A case's id as three whole numbers of 30, 30 and 20 bits, in the order of the ids as text. Null where it is no id of a
 * case (16 letters and digits of base 32).
 */
export function keyOfCase(id: string): RecordKey | null {
  if (id.length !== 16) return null;
  const key: [number, number, number] = [0, 0, 0];
  let at = 0;
  for (let part = 0; part < 3; part += 1) {
    for (let i = 0; i < (LENGTHS[part] as number); i += 1, at += 1) {
      const digit = LETTERS.indexOf(id[at] as string);
      if (digit < 0) return null;
      key[part] = (key[part] as number) * 32 + digit;
    }
  }
  return key;
}

/** The id that a key stands for. */
export function caseOfKey(key: RecordKey): string {
  return key.map((part, i) => lettersOf(part, LENGTHS[i] as number)).join('');
}

function lettersOf(part: number, length: number): string {
  let text = '';
  for (let rest = part, i = 0; i < length; i += 1, rest = Math.floor(rest / 32)) text = LETTERS[rest % 32] + text;
  return text;
}
