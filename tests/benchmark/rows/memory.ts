import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Row } from '../run/measure';

type Measured = { start: number; held: number; resident: number };

function inChild(args: string[], heap: number): Measured {
  const file = fileURLToPath(new URL('../run/memory-child.ts', import.meta.url));
  const flags = ['--expose-gc', `--max-old-space-size=${heap}`, '--import', 'tsx', file, ...args];
  return JSON.parse(execFileSync(process.execPath, flags, { stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1e6 }).toString()) as Measured;
}

/** Memory beyond an empty process, each side in a process of its own. */
export function memoryRow(snapshot: string, cases: number): Row {
  const ours = inChild(['snapshot', snapshot], 2_000);
  const theirs = inChild(['objects', String(cases)], 8_000);
  const mb = (n: number) => `${n.toFixed(0)} MB`;
  const whole = cases >= 1_000_000;
  return {
    id: 'memory',
    work: `memory for ${cases.toLocaleString('en')} cases beyond an empty process`,
    alternative: 'array of plain objects',
    asked: 'at most 250 MB in all (1M)',
    ours: `${mb(ours.held)} after 200 look-ups (${mb(ours.start)} before; resident ${mb(ours.resident)})`,
    theirs: mb(theirs.held),
    ratio: ours.held,
    ratioText: `${(theirs.held / ours.held).toFixed(1)} times smaller`,
    met: whole ? ours.held <= 250 : null,
    note: whole ? undefined : 'the target is for 1M',
  };
}
