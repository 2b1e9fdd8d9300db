import type { LookUpResult, LookUpWarning } from '../../schemas/look-up';
import type { Question } from '../../schemas/question';

/** Fewer matching cases than this are called few. */
const FEW_CASES = 10;
/** From this share on, the unit is said to fit nothing known. */
const MUCH_UNLISTED = 0.25;

/** What a reader must be told before trusting the figures. */
export function warningsOn(question: Question, result: Pick<LookUpResult, 'read' | 'cases' | 'unlisted'>): LookUpWarning[] {
  const { read, cases, unlisted } = result;
  const warnings: LookUpWarning[] = [];
  if (read.findings.length === 0) {
    warnings.push(question.text.trim() === '' ? 'no-findings' : 'nothing-read');
  } else if (cases.matching === 0) warnings.push('no-match');
  else if (cases.matching < FEW_CASES) warnings.push('few-cases');
  if (read.device !== null && cases.onDevice === 0) warnings.push('device-without-cases');
  if (read.findings.length > 0 && unlisted.probability >= MUCH_UNLISTED) warnings.push('fits-nothing-known');
  return warnings;
}
