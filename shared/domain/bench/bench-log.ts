import type { BenchEntry, EntryBody } from '../../schemas/bench';
import type { Reading } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';

/** The entries of a unit that stand, in order of time, then id. */
export function standing(entries: readonly BenchEntry[], unitId: string): BenchEntry[] {
  return entries
    .filter((entry) => entry.unitId === unitId && !entry.deleted)
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

/** Entries of one kind, narrowed. */
export function bodiesOf<K extends EntryBody['kind']>(entries: readonly BenchEntry[], kind: K): Extract<EntryBody, { kind: K }>[] {
  return entries.flatMap(({ body }) => (body.kind === kind ? [body as Extract<EntryBody, { kind: K }>] : []));
}

/**
 * What a log says to the statistics, in order: a symptom or a check entered again takes the new value; every fix that
 * was done together with others carries the attempt's result.
 */
export function findingsOf(entries: readonly BenchEntry[]): Finding[] {
  const findings = new Map<string, Finding>();
  const put = (finding: Finding) => {
    const key = `${finding.kind} ${finding.id}`;
    findings.delete(key);
    findings.set(key, finding);
  };
  for (const { body } of entries) {
    if (body.kind === 'symptom') put({ kind: 'symptom', id: body.symptom, value: body.present ? 'present' : 'absent' });
    if (body.kind === 'check') put({ kind: 'check', id: body.check, value: body.outcome });
    if (body.kind === 'fix') for (const { fix } of body.fixes) put({ kind: 'fix', id: fix, value: body.result });
  }
  return [...findings.values()];
}

/** The latest reading of each pin of each part, in the order in which pins were first read. */
export function pinReadings(entries: readonly BenchEntry[]): Reading[] {
  const latest = new Map<string, Reading>();
  for (const { reading } of bodiesOf(entries, 'pin')) latest.set(`${reading.designator} ${reading.pin}`, reading);
  return [...latest.values()];
}
