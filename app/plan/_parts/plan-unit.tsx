import type { LookUpResult } from '../../../shared/schemas/look-up';
import { inSentence, joinWords } from '../../_components/words';
import { valueWords } from '../../_components/value-words';

/** Which unit the plan is for: its device, and what was found so far. */
export function PlanUnit({ read }: { read: LookUpResult['read'] }) {
  const found = read.findings.map(
    (finding) => `${finding.kind === 'fix' ? 'tried ' : ''}${inSentence(finding.label)}: ${valueWords(finding)}`,
  );
  return (
    <p className="lead">
      {read.device ? `${read.device.label}. ` : 'Any device. '}
      {found.length > 0 ? `Found so far: ${joinWords(found)}.` : 'Nothing was read from the words.'}
    </p>
  );
}
