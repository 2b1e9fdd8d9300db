import { appendFileSync, readFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

// Loaded into the server before anything else (`node --import`): writes a line for every time that the event loop did not come round
// for more than 50 ms, and how much of that the main thread was ready to run while the machine ran something else (Linux counts it:
// /proc/<pid>/task/<tid>/schedstat, second figure, nanoseconds). What remains is the program's own.
const file = process.env.LOOP_PROBE_FILE;
const LEAST_MS = 50;
const EVERY_MS = 10;

/** Milliseconds that the main thread has waited for a processor so far; 0 where the system does not count it. */
function waited() {
  try {
    return Number(readFileSync(`/proc/self/task/${process.pid}/schedstat`, 'utf8').split(' ')[1]) / 1e6;
  } catch {
    return 0;
  }
}

if (file !== undefined && isMainThread && process.send === undefined) {
  let last = performance.now();
  let before = waited();
  const look = () => {
    const [now, soFar] = [performance.now(), waited()];
    const ms = now - last - EVERY_MS;
    if (ms > LEAST_MS) appendFileSync(file, `${JSON.stringify({ at: Date.now(), ms, waitedMs: Math.min(ms, soFar - before) })}\n`);
    [last, before] = [performance.now(), soFar];
    setTimeout(look, EVERY_MS).unref();
  };
  look();
}
