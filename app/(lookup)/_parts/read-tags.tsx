import type { LookUpResult } from '../../../shared/schemas/look-up';
import { withoutAside, withRestored } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { AddIcon } from '../../_components/icons';
import { AddFinding } from './add-finding';
import { FindingTag } from './finding-tag';
import { AmbiguousTag, UnreadTag } from './unsure-tags';

type ReadTagsProps = { question: Question; read: LookUpResult['read']; entries: VocabularyEntry[] };

/** How the words were read, each reading open to correction; every change is a link or a form, so an address. */
export function ReadTags({ question, read, entries }: ReadTagsProps) {
  const entryOf = (kind: string, id: string) => entries.find((entry) => entry.kind === kind && entry.id === id);
  return (
    <section aria-label="How this was read" className="read-section">
      <ul className="read">
        {read.findings.map((finding) => (
          <FindingTag
            key={`${finding.kind}.${finding.id}`}
            question={question}
            finding={finding}
            entry={entryOf(finding.kind, finding.id)}
          />
        ))}
        {read.ambiguous.map((span) => (
          <AmbiguousTag key={`${span.start}-${span.text}`} question={question} span={span} entries={entries} />
        ))}
        {read.unread
          .filter((span) => !question.aside.includes(span.text))
          .map((span) => (
            <UnreadTag key={`${span.start}-${span.text}`} question={question} text={span.text} />
          ))}
        {question.without.map((key) => (
          <li className="tag tag-aside" key={`${key.kind}.${key.id}`}>
            <span className="tag-words">
              taken out: <s>{entryOf(key.kind, key.id)?.label ?? key.id}</s>
            </span>
            <AddressLink href={questionHref('/', withRestored(question, key))}>Put back</AddressLink>
          </li>
        ))}
        {question.aside.map((text) => (
          <li className="tag tag-aside" key={text}>
            <span className="tag-words">
              set aside: <s>{text}</s>
            </span>
            <AddressLink href={questionHref('/', withoutAside(question, text))}>Put back</AddressLink>
          </li>
        ))}
        <li className="add-item">
          <details className="add">
            <summary>
              <AddIcon /> Add a finding
            </summary>
            <AddFinding question={question} label="Symptom, check or fix tried" />
          </details>
        </li>
      </ul>
      {read.hidden.map(({ id, label, by }) => (
        <p key={id} className="small">
          “{label}” goes with “{by.label}” on any unit, so it is not counted apart.
        </p>
      ))}
    </section>
  );
}
