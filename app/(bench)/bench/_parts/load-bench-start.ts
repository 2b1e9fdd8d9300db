import 'server-only';
import type { Finding } from '../../../../shared/schemas/finding';
import { sameKey } from '../../../_address/finding-code';
import { isBlank, type Question } from '../../../_address/question';
import { serverCaller } from '../../../_trpc/server';
import type { BenchStart } from './bench-app';

/** What a look-up's address says, as a log begins with it; null where it says nothing. */
export async function loadBenchStart(question: Question): Promise<BenchStart | null> {
  if (isBlank(question) && question.device === null) return null;
  const read = await serverCaller().submission.readWords({ text: question.text });
  const changed = [...question.set, ...question.without];
  const stated = read.findings.filter((f) => !changed.some((other) => sameKey(other, f)));
  return {
    device: question.device ?? read.device,
    complete: question.complete,
    findings: [...stated.map(({ kind, id, value }) => ({ kind, id, value }) as Finding), ...question.set],
    notes: [...read.unread, ...read.ambiguous.map(({ text }) => text)].filter((text) => !question.aside.includes(text)),
  };
}
