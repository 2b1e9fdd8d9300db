import type { FixResult } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';
import type { ReaderContext } from './reader-context';

const RESULT_LABELS: Record<FixResult, string> = {
  'no-change': 'no change',
  'symptom-changed': 'symptom changed',
  partly: 'partly cured',
  cured: 'cured',
  'made-worse': 'made worse',
};

/** How a finding is shown: the entry's label, with the value behind it where it is not simply "present". */
export function labelOf(finding: Finding, context: ReaderContext): string {
  if (finding.kind === 'symptom') {
    const label = context.symptoms.get(finding.id)?.label ?? finding.id;
    return finding.value === 'present' ? label : `${label}: absent`;
  }
  if (finding.kind === 'fix') return `${context.fixes.get(finding.id)?.label ?? finding.id}: ${RESULT_LABELS[finding.value]}`;
  const check = context.checks.get(finding.id);
  const outcome = check?.outcomes.find((o) => o.slug === finding.value);
  return `${check?.label ?? finding.id}: ${(outcome?.label ?? finding.value).toLowerCase()}`;
}
