const PLACES = 3;

/** A number for the terminal: three decimals. */
export function cell(value: number): string {
  return value.toFixed(PLACES);
}

/** Rows in columns under a heading; empty where there are no rows. */
export function table(heading: string, rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  const widths: number[] = [];
  for (const row of rows) row.forEach((text, column) => (widths[column] = Math.max(widths[column] ?? 0, text.length)));
  const lines = rows.map(
    (row) =>
      `  ${row
        .map((text, column) => text.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd()}`,
  );
  return `${heading}\n${lines.join('\n')}\n`;
}
