import { type CaseContent, PROOFS } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';
import type { CodedRecord, RecordedFinding } from '../../stats/layout';
import { type Coding, CodingError } from './coding';
import { impliedAbsences } from './implied-absences';

/**
 * A case in numbers. Fixes done together each carry the attempt's result. What was checked after the fix that cured
 * says nothing about the fault any more and is left out. Throws CodingError naming everything that the
 * vocabulary or catalogue does not hold.
 */
export function encodeCase(coding: Coding, content: CaseContent): CodedRecord {
  const into = collector(coding);
  const { findings, unknown } = into;
  const device = coding.deviceOf(content.device);
  if (device === undefined) unknown.push(`device ${content.device}`);
  const causes = content.causes.map(({ cause }) => {
    const number = coding.causeOf(cause);
    if (number === undefined) unknown.push(`cause ${cause}`);
    return number as number;
  });
  addSymptoms(coding, content, { device, into });
  addSteps(content, into);
  if (unknown.length > 0) throw new CodingError(unknown);
  const distinctCauses = [...new Set(causes)];
  return {
    device: device as number,
    causes: distinctCauses,
    proof: distinctCauses.length === 0 || content.proof === null ? -1 : PROOFS.indexOf(content.proof),
    findings,
  };
}

type Where = Pick<RecordedFinding, 'step' | 'proves'>;

/** Takes findings one by one, and the names that the vocabulary does not hold. */
function collector(coding: Coding) {
  const findings: RecordedFinding[] = [];
  const unknown: string[] = [];
  const add = (kind: Finding['kind'], id: string, value: string, { step, proves }: Where): number | undefined => {
    const observable = coding.observableOf(kind, id);
    const named = observable === undefined ? undefined : coding.observables[observable];
    const number = named?.values.indexOf(value) ?? -1;
    if (observable === undefined || named === undefined || number < 0) {
      unknown.push(`${kind} ${id} ${value}`);
      return undefined;
    }
    findings.push({ observable, value: number, implied: false, step, stage: named.stage, proves });
    return observable;
  };
  return { findings, unknown, add };
}

type Collector = ReturnType<typeof collector>;

function addSymptoms(coding: Coding, content: CaseContent, { device, into }: { device: number | undefined; into: Collector }): void {
  const named = new Map(content.symptoms.map((s) => [s.symptom, s.present]));
  const stated = new Map<number, boolean>();
  for (const [id, present] of named) {
    const observable = into.add('symptom', id, present ? 'present' : 'absent', { step: 0, proves: false });
    if (observable !== undefined) stated.set(observable, present);
  }
  if (device === undefined) return;
  const category = coding.devices[device]?.category ?? null;
  for (const observable of impliedAbsences(coding, { stated, category, complete: content.symptomsComplete })) {
    into.findings.push({ observable, value: 0, implied: true, step: 0, stage: 0, proves: false });
  }
}

function addSteps(content: CaseContent, into: Collector): void {
  const last = content.steps.findLastIndex((step) => step.kind === 'fix' && step.result === 'cured');
  const steps = last < 0 ? content.steps : content.steps.slice(0, last + 1);
  steps.forEach((step, position) => {
    const at = position + 1;
    if (step.kind === 'check') into.add('check', step.check, step.outcome, { step: at, proves: content.provedByStep === position });
    else for (const { fix } of step.fixes) into.add('fix', fix, step.result, { step: at, proves: step.result === 'cured' });
  });
}
