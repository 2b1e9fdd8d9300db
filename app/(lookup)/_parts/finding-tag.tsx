import type { Finding, ReadFinding } from '../../../shared/schemas/finding';
import { withFinding, withoutFinding } from '../../_address/edit-question';
import { sameKey } from '../../_address/finding-code';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { FlipIcon, MenuIcon, RemoveIcon } from '../../_components/icons';
import { inSentence } from '../../_components/words';

type FindingTagProps = { question: Question; finding: ReadFinding; entry: VocabularyEntry | undefined };

/** One finding with its value: the value can be flipped or changed, the finding taken out. */
export function FindingTag({ question, finding, entry }: FindingTagProps) {
  // A finding that stands in the address alone leaves with it; one that the words hold has to be kept out.
  const fromWords = finding.text !== '';
  const remove = questionHref('/', withoutFinding(question, finding, fromWords));
  const changed = question.set.some((other) => sameKey(other, finding));
  const told = fromWords && finding.text.toLowerCase() !== finding.label.toLowerCase();
  const absent = finding.kind === 'symptom' && finding.value === 'absent';
  return (
    <li className={absent ? 'tag tag-absent' : 'tag'}>
      <div className="tag-main">
        <span className="tag-words">
          {finding.kind === 'fix' ? `Tried: ${inSentence(finding.label)}` : finding.label}
          {told || changed ? (
            <span className="tag-from">
              {told ? `“${finding.text}”` : ''}
              {told && changed ? ', ' : ''}
              {changed ? 'set by you' : ''}
            </span>
          ) : null}
        </span>
        {finding.kind === 'symptom' ? (
          <Flip question={question} finding={finding} />
        ) : (
          <ValueMenu question={question} finding={finding} entry={entry} />
        )}
      </div>
      <AddressLink href={remove} label={`Take out ${finding.label}`}>
        <RemoveIcon />
      </AddressLink>
    </li>
  );
}

function Flip({ question, finding }: { question: Question; finding: ReadFinding & { kind: 'symptom' } }) {
  const other = finding.value === 'present' ? 'absent' : 'present';
  const href = questionHref('/', withFinding(question, { kind: 'symptom', id: finding.id, value: other }));
  return (
    <AddressLink href={href} label={`${finding.label} is ${finding.value}; make it ${other}`}>
      <span className="tag-value">{finding.value}</span> <FlipIcon />
    </AddressLink>
  );
}

function ValueMenu({ question, finding, entry }: FindingTagProps) {
  const values = entry?.values ?? [];
  const now = values.find((v) => v.value === finding.value)?.label ?? finding.value;
  return (
    <details name="value-menu">
      <summary>
        <span className="sr-only">{finding.label} is </span>
        <span className="tag-value">{inSentence(now)}</span>
        <span className="sr-only">; change it</span> <MenuIcon />
      </summary>
      <ul className="menu">
        {values
          .filter((v) => v.value !== finding.value)
          .map((v) => (
            <li key={v.value}>
              <AddressLink
                href={questionHref('/', withFinding(question, { kind: finding.kind, id: finding.id, value: v.value } as Finding))}
              >
                {inSentence(v.label)}
              </AddressLink>
            </li>
          ))}
      </ul>
    </details>
  );
}
