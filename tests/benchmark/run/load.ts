import { Agent, get } from 'node:http';

export type Load = { perSecond: number; median: number; p95: number; bytes: number };

/**
 * Asks for addresses in turn over so many kept connections for some seconds, after one second unmeasured. On loopback,
 * and bounded in time.
 * @throws where an answer is not a success
 */
export async function loadOf(addresses: readonly string[], { connections, seconds }: { connections: number; seconds: number }): Promise<Load> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  let bytes = 0;
  let next = 0;
  const warmUntil = performance.now() + 1_000;
  const end = warmUntil + seconds * 1_000;
  const worker = async () => {
    while (performance.now() < end) {
      const start = performance.now();
      const length = await answer(addresses[next++ % addresses.length] as string, agent);
      if (start < warmUntil) continue;
      times.push(performance.now() - start);
      bytes += length;
    }
  };
  await Promise.all(Array.from({ length: connections }, worker));
  agent.destroy();
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(share * times.length)] ?? Number.NaN;
  return { perSecond: times.length / seconds, median: at(0.5), p95: at(0.95), bytes: bytes / times.length };
}

function answer(address: string, agent: Agent): Promise<number> {
  return new Promise((resolve, reject) => {
    get(address, { agent }, (response) => {
      let length = 0;
      response.on('data', (chunk: Buffer) => {
        length += chunk.length;
      });
      response.on('end', () => {
        if (response.statusCode === 200) resolve(length);
        else reject(new Error(`${address.slice(0, 120)} answers ${response.statusCode}.`));
      });
      response.on('error', reject);
    }).on('error', reject);
  });
}
