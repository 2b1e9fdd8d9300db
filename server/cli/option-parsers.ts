import { InvalidArgumentError } from 'commander';

/** Parsers of option values for commander; each refuses with what to write instead. */

export function wholeNumber(least: number, most: number) {
  return (text: string): number => {
    const value = Number(text);
    if (!Number.isInteger(value) || value < least || value > most) {
      throw new InvalidArgumentError(`Write a whole number from ${least} to ${most}.`);
    }
    return value;
  };
}

export function amount(most: number) {
  return (text: string): number => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value) || value < 0 || value > most) {
      throw new InvalidArgumentError(`Write a number from 0 to ${most}.`);
    }
    return value;
  };
}

/** A list parted by commas, each one of `known`. */
export function listOf<T extends string>(known: readonly T[]) {
  return (text: string): T[] => {
    const entries = text.split(',').map((entry) => entry.trim());
    const strange = entries.filter((entry) => !(known as readonly string[]).includes(entry));
    if (strange.length > 0) throw new InvalidArgumentError(`Not known: ${strange.join(', ')}. Known are: ${known.join(', ')}.`);
    return entries as T[];
  };
}
