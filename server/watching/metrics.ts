import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry, type RegistryContentType } from 'prom-client';

/** Upper bounds of the times of procedures, in seconds. */
const SECONDS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5];

function createMetrics() {
  const registry = new Registry();
  // The library's types know a registry of the older text format alone; which one it writes is set here.
  (registry as unknown as Registry<RegistryContentType>).setContentType(Registry.OPENMETRICS_CONTENT_TYPE);
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  return {
    registry,
    procedures: new Counter({
      name: 'second_bench_procedures',
      help: 'Procedures called, by name and how they ended: ok, refused or failed.',
      labelNames: ['procedure', 'ended'] as const,
      registers,
    }),
    seconds: new Histogram({
      name: 'second_bench_procedure_seconds',
      help: 'Time that procedures took, in seconds.',
      labelNames: ['procedure'] as const,
      buckets: SECONDS,
      registers,
    }),
    cases: new Gauge({ name: 'second_bench_accepted_cases', help: 'Accepted cases in the casebook in memory.', registers }),
    lag: new Gauge({
      name: 'second_bench_changes_behind',
      help: 'Changes of what is published that the casebook in memory has yet to take up.',
      registers,
    }),
  };
}

type Metrics = ReturnType<typeof createMetrics>;

/** The bundler may load this module several times in one process; there is one set of metrics. */
const kept = globalThis as typeof globalThis & { secondBenchMetrics?: Metrics };

/** The process's metrics: counts and times, nothing about anybody. */
export function getMetrics(): Metrics {
  kept.secondBenchMetrics ??= createMetrics();
  return kept.secondBenchMetrics;
}

/** Counts one call of a procedure. */
export function countProcedure(procedure: string, ended: 'ok' | 'refused' | 'failed', seconds: number): void {
  const metrics = getMetrics();
  metrics.procedures.inc({ procedure, ended });
  metrics.seconds.observe({ procedure }, seconds);
}
