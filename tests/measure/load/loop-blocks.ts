import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A time that the server's event loop did not come round: when it ended, how long it was, and how long of it the machine ran something else. */
type Block = { at: number; ms: number; waitedMs: number };

/** What is asked of the event loop, in milliseconds. */
const LONGEST = 100;

/** Has the server that is started with these options of Node write down its blocks, to be told of afterwards. */
export function watchLoop(): { nodeOptions: string; file: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-loop-'));
  const probe = fileURLToPath(new URL('./loop-probe.mjs', import.meta.url));
  return { nodeOptions: `--import ${probe}`, file: join(folder, 'blocks'), remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** A sentence on the blocks between two moments: in how many stretches there was one over 100 ms, and the longest; as the clock has it and the program's own. */
export function tellBlocks(file: string, { from, to, every }: { from: number; to: number; every: number }): { told: string; longestOwn: number } {
  const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : [];
  const blocks = lines.filter((line) => line !== '').map((line) => JSON.parse(line) as Block);
  const within = blocks.filter(({ at }) => at > from && at <= to);
  const stretches = Math.ceil((to - from) / every);
  const count = (of: (block: Block) => number) => {
    const over = within.filter((block) => of(block) > LONGEST);
    const longest = Math.max(0, ...within.map(of));
    return { over: over.length, stretches: new Set(over.map(({ at }) => Math.floor((at - from) / every))).size, longest };
  };
  const say = ({ over, stretches: hit, longest }: ReturnType<typeof count>) =>
    `over ${LONGEST} ms ${over} times, in ${hit} of ${stretches} five-second stretches, ${longest.toFixed(0)} ms at the longest`;
  const [wall, own] = [count(({ ms }) => ms), count(({ ms, waitedMs }) => ms - waitedMs)];
  return {
    told: `Event loop: ${say(wall)}; without the time in which the server waited for a processor: ${say(own)}.`,
    longestOwn: own.longest,
  };
}
