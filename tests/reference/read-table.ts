import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';

/** Rows of one of the open tables, every cell as text. */
export function readTable(name: 'soybean' | 'house-votes-84' | 'zoo'): Record<string, string>[] {
  const file = fileURLToPath(new URL(`./datasets/${name}.csv`, import.meta.url));
  return parse(readFileSync(file, 'utf8'), { columns: true });
}

export const CAUSE_COLUMNS = { soybean: 'Class', 'house-votes-84': 'Class', zoo: 'type' } as const;
