import { type CaseContent, type CaseStep, PROOFS } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';
import type { CodedRecord, RecordedFinding } from '../../stats/layout';
import { type Coding, CodingError, encodeFinding } from './coding';
import { impliedAbsences } from './implied-absences';

/**
 * A case in numbers. Fixes done together each carry the attempt's result. What was checked after the fix that cured
 * says nothing about the fault any more and is left out. Throws CodingError naming everything that the
 * vocabulary or catalogue does not hold.
 */
export function encodeCase(coding: Coding, content: CaseContent): CodedRecord {
  const unknown: string[] = [];
  const device = coding.deviceOf(content.device);
  if (device === undefined) unknown.push(`device ${content.device}`);
  const causes = content.causes.map(({ cause }) => {
    const number = coding.causeOf(cause);
    if (number === undefined) unknown.push(`cause ${cause}`);
    return number as number;
  });
  const findings: RecordedFinding[] = [];
  for (const { finding, ...where } of [...symptomFindings(coding, content, device), ...stepFindings(content)]) {
    const coded = encodeFinding(coding, finding);
    if (coded === undefined) unknown.push(`${finding.kind} ${finding.id} ${finding.value}`);
    else findings.push({ ...coded, ...where, stage: coding.observables[coded.observable]?.stage ?? 0 });
  }
  if (unknown.length > 0) throw new CodingError(unknown);
  const distinctCauses = [...new Set(causes)];
  return {
    device: device as number,
    causes: distinctCauses,
    proof: distinctCauses.length === 0 || content.proof === null ? -1 : PROOFS.indexOf(content.proof),
    findings,
  };
}

type Placed = { finding: Finding; implied: boolean; step: number; proves: boolean };

function symptomFindings(coding: Coding, content: CaseContent, device: number | undefined): Placed[] {
  const at = { step: 0, proves: false };
  const stated = new Map(content.symptoms.map((s) => [s.symptom, s.present]));
  const placed: Placed[] = [...stated].map(([id, present]) => ({
    finding: { kind: 'symptom', id, value: present ? 'present' : 'absent' },
    implied: false,
    ...at,
  }));
  if (device === undefined) return placed;
  const category = coding.devices[device]?.category ?? null;
  for (const id of impliedAbsences(coding, { stated, category, complete: content.symptomsComplete })) {
    placed.push({ finding: { kind: 'symptom', id, value: 'absent' }, implied: true, ...at });
  }
  return placed;
}

function stepFindings(content: CaseContent): Placed[] {
  const last = content.steps.findLastIndex((step) => step.kind === 'fix' && step.result === 'cured');
  const steps = last < 0 ? content.steps : content.steps.slice(0, last + 1);
  return steps.flatMap((step, position) => placeStep(step, { position, proved: content.provedByStep === position }));
}

function placeStep(step: CaseStep, { position, proved }: { position: number; proved: boolean }): Placed[] {
  const at = { implied: false, step: position + 1 };
  if (step.kind === 'check') {
    return [{ finding: { kind: 'check', id: step.check, value: step.outcome }, proves: proved, ...at }];
  }
  return step.fixes.map(({ fix }) => ({
    finding: { kind: 'fix', id: fix, value: step.result },
    proves: step.result === 'cured',
    ...at,
  }));
}
