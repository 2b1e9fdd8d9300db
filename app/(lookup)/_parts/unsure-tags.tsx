import type { AmbiguousSpan, Finding } from '../../../shared/schemas/finding';
import { withAside, withFinding } from '../../_address/edit-question';
import { sameKey } from '../../_address/finding-code';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { AddIcon, RemoveIcon } from '../../_components/icons';
import { AddFinding } from './add-finding';

type UnreadTagProps = { question: Question; text: string };

/** Words that were not read, with a way to say what they mean or to set them aside. */
export function UnreadTag({ question, text }: UnreadTagProps) {
  return (
    <li className="tag tag-unread">
      <div className="tag-main">
        <span className="tag-words">not read: “{text}”</span>
        <details>
          <summary>
            <AddIcon /> Say what it means<span className="sr-only">: {text}</span>
          </summary>
          <AddFinding question={question} label={`“${text}” means`} standsFor={text} />
        </details>
      </div>
      <AddressLink href={questionHref('/', withAside(question, text))} label={`Set aside “${text}”`}>
        <RemoveIcon />
      </AddressLink>
    </li>
  );
}

type AmbiguousTagProps = { question: Question; span: AmbiguousSpan; entries: VocabularyEntry[] };

/** Words that can be read in more than one way, with their choices, until one of them is taken or set aside. */
export function AmbiguousTag({ question, span, entries }: AmbiguousTagProps) {
  const settled = span.choices.some((choice) => question.set.some((finding) => sameKey(finding, choice)));
  if (settled || question.aside.includes(span.text)) return null;
  return (
    <li className="tag tag-choice">
      <div className="tag-main">
        <span className="tag-words">“{span.text}” can mean:</span>
        {span.choices.map((choice) => (
          <AddressLink
            key={`${choice.kind}.${choice.id}.${choice.value}`}
            className="choice"
            href={questionHref('/', withFinding(question, { kind: choice.kind, id: choice.id, value: choice.value } as Finding))}
          >
            {choice.label}: {valueLabel(choice, entries)}
          </AddressLink>
        ))}
        <AddressLink className="choice" href={questionHref('/', withAside(question, span.text))}>
          none of these
        </AddressLink>
      </div>
    </li>
  );
}

function valueLabel(choice: Finding, entries: VocabularyEntry[]): string {
  const entry = entries.find((other) => sameKey(other, choice));
  return entry?.values.find((v) => v.value === choice.value)?.label ?? choice.value;
}
