import type { CaseContent, CaseRecord } from '../../schemas/case';
import { FIX_RESULTS } from '../../schemas/case';
import type { CodedRecord } from '../../stats/layout';
import type { Coding } from '../coding/coding';
import { encodeCase } from '../coding/encode-case';

const EXCERPT_LENGTH = 180;

/** Fixes tried together, by observable, and the value of their result. */
export type FixAttempt = { fixes: readonly number[]; result: number };

/** What the model keeps of an accepted case: enough to count, compare and name it, without its texts. */
export type CaseEntry = {
  id: string;
  device: string;
  month: string;
  excerpt: string;
  causes: CaseContent['causes'];
  proof: CaseContent['proof'];
  outcome: CaseContent['outcome'];
  attempts: readonly FixAttempt[];
  coded: CodedRecord;
};

/** Codes a case and keeps what shows it. Throws CodingError where it names what the coding does not know. */
export function caseEntry(coding: Coding, { id, content }: CaseRecord): CaseEntry {
  const coded = encodeCase(coding, content);
  return {
    id,
    device: content.device,
    month: content.month,
    excerpt: excerptOf(content.narrative),
    causes: content.causes,
    proof: content.proof,
    outcome: content.outcome,
    attempts: content.steps.flatMap((step) => (step.kind === 'fix' ? [attemptOf(coding, step)] : [])),
    coded,
  };
}

function attemptOf(coding: Coding, step: Extract<CaseContent['steps'][number], { kind: 'fix' }>): FixAttempt {
  const observables = step.fixes.flatMap((f) => coding.observableOf('fix', f.fix) ?? []);
  return { fixes: [...new Set(observables)], result: FIX_RESULTS.indexOf(step.result) };
}

/** The beginning of a narrative on one line, cut between words. */
export function excerptOf(narrative: string): string {
  const line = narrative.replace(/\s+/gu, ' ').trim();
  if (line.length <= EXCERPT_LENGTH) return line;
  const cut = line.slice(0, EXCERPT_LENGTH);
  const space = cut.lastIndexOf(' ');
  return `${(space > EXCERPT_LENGTH / 2 ? cut.slice(0, space) : cut).trimEnd()} …`;
}
