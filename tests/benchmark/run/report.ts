import { cpus, totalmem } from 'node:os';
import type { Row } from './measure';

export type Report = { at: string; command: string; machine: string; node: string; quick: boolean; rows: Row[] };

/** What the figures were measured on, without naming the machine. */
export function machineWords(): string {
  const [first] = cpus();
  return `${cpus().length} cores (${first?.model.trim() ?? 'unknown'}), ${(totalmem() / 1e9).toFixed(0)} GB`;
}

const VERDICT = new Map<boolean | null, string>([
  [true, 'yes'],
  [false, '**no**'],
  [null, '–'],
]);

/** The rows as a table in Markdown. */
export function tableOf({ rows }: Report): string {
  const head = '| work | alternative, same run | ours | alternative | measured | asked | met |\n|---|---|---|---|---|---|---|';
  const lines = rows.map((row) => {
    const note = row.note ? ` (${row.note})` : '';
    return `| ${row.work}${note} | ${row.alternative} | ${row.ours} | ${row.theirs} | ${row.ratioText} | ${row.asked} | ${VERDICT.get(row.met)} |`;
  });
  return [head, ...lines].join('\n');
}

/** The report as a stretch of the benchmark page. */
export function pageOf(report: Report): string {
  const mode = report.quick ? 'quick mode: smaller sizes, no target is judged by it' : 'full sizes';
  return `Measured ${report.at.slice(0, 10)} with \`${report.command}\` on ${report.machine}, Node ${report.node}; ${mode}.\n\n${tableOf(report)}\n`;
}
