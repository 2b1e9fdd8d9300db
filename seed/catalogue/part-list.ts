import { type BoardPart, boardPartSchema, type PACKAGES } from '../../shared/schemas/device';
import { PIN_NAMES } from './pin-names';

/**
 * Reads a part list written as one line per kind of part:
 *
 *     U10-U17   work-ram   4164   DIP 16
 *
 * designators (single, or a run such as U10-U17, several joined by commas), role, standard part number or `-`, package,
 * number of pins. Blank lines are passed over. Throws on a line that it cannot read or a designator used twice.
 */
export function partList(text: string): BoardPart[] {
  const parts = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .flatMap(partsOfLine);
  const seen = new Set<string>();
  for (const { designator } of parts) {
    if (seen.has(designator)) throw new Error(`Designator ${designator} is used twice.`);
    seen.add(designator);
  }
  return parts;
}

function partsOfLine(line: string): BoardPart[] {
  const [designators, role, number, packageName, pins] = line.split(/\s+/);
  if (!designators || !role || !number || !packageName || !pins) throw new Error(`Part list line has a gap: ${line}`);
  const partNumber = number === '-' ? null : number;
  const pinCount = Number(pins);
  const names = partNumber === null ? [] : [...(PIN_NAMES[partNumber] ?? [])];
  if (names.length > 0 && names.length !== pinCount) throw new Error(`${number} has ${names.length} pin names: ${line}`);
  return expandDesignators(designators).map((designator) =>
    boardPartSchema.parse({
      designator,
      role,
      partNumber,
      package: packageName as (typeof PACKAGES)[number],
      pins: pinCount,
      pinNames: names,
    }),
  );
}

/** `U1,U10-U12` is U1, U10, U11, U12. */
export function expandDesignators(text: string): string[] {
  return text.split(',').flatMap((item) => {
    const run = /^([A-Z]+)([0-9]+)-\1([0-9]+)$/.exec(item);
    if (!run) return [item];
    const [, letters, first, last] = run;
    const count = Number(last) - Number(first) + 1;
    return Array.from({ length: count }, (_, i) => `${letters}${Number(first) + i}`);
  });
}
