import type { LookUpResult, LookUpWarning } from '../../../shared/schemas/look-up';
import { formatCount } from '../../_components/format-figures';
import { Note } from '../../_components/note';

/** What to mind about this answer, in plain words; nothing where there is nothing. */
export function WarningsList({ result }: { result: LookUpResult }) {
  const said = result.warnings.map((warning) => ({ warning, words: warningWords(warning, result) }));
  if (said.length === 0) return null;
  return (
    <ul className="notes">
      {said.map(({ warning, words }) => (
        <li key={warning}>
          <Note kind="warning">{words}</Note>
        </li>
      ))}
    </ul>
  );
}

function warningWords(warning: LookUpWarning, result: LookUpResult): string {
  const device = result.read.device?.label ?? 'this device';
  switch (warning) {
    case 'few-cases':
      return `Only ${formatCount(result.cases.matching)} cases stand behind this. The brackets are wide; treat the order as a hint.`;
    case 'device-without-cases':
      return `Nobody has posted a case on ${device} yet. These figures are borrowed from related machines.`;
    case 'no-findings':
      return 'No finding was given, so this is only how such units usually fail. Say what you see.';
    case 'nothing-read':
      return 'None of your words could be read, so this is only how such units usually fail. Say below what they mean.';
    case 'no-match':
      return 'No case carries all that you saw. The figures are put together from cases that carry parts of it.';
    case 'fits-nothing-known':
      return 'What you saw fits no known cause well. Repeat the most surprising reading first; a second fault, or a cause not on record, is possible.';
  }
}
