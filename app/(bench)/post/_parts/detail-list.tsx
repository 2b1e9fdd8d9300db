'use client';

import { DETAIL_LABELS, type DetailKind } from '../../../../shared/domain/anonymise/personal-detail';
import { mapTexts, openDetails } from '../../../../shared/domain/submission/draft-texts';
import type { FoundDetail } from '../../../../shared/schemas/submission';
import { CautionIcon } from '../../../_components/icons';
import { useForm } from './form-context';
import { placeOfField } from '../../../../shared/domain/submission/place-of-field';

/** Personal details found in the form's texts, each to be replaced, removed or kept. Nothing where none is open. */
export function DetailList({ details }: { details: readonly FoundDetail[] }) {
  const { document, update, announce } = useForm();
  const texts = new Map<string, string>();
  mapTexts(document, (field, text) => {
    texts.set(field, text);
    return text;
  });
  // What was typed since may have taken a detail out already.
  const open = openDetails(document, details).filter(({ field, text }) => texts.get(field)?.includes(text));
  if (open.length === 0) return null;
  const replace = (detail: FoundDetail, by: string) => {
    update((now) => mapTexts(now, (field, text) => (field === detail.field ? text.replaceAll(detail.text, by) : text)));
    announce(by === '' ? `${detail.text} is removed.` : `${detail.text} is replaced by ${by}.`);
  };
  const keep = (detail: FoundDetail) => {
    update((now) => ({ ...now, kept: [...now.kept, detail.text.slice(0, 200)] }));
    announce(`${detail.text} is kept, and marked for the moderators.`);
  };
  const distinct = open.filter((detail, i) => open.findIndex((o) => o.field === detail.field && o.text === detail.text) === i);
  return (
    <section className="post-details" id="post-details" tabIndex={-1} aria-labelledby="post-details-head">
      <h3 id="post-details-head">
        <CautionIcon /> This may say who or where you are
      </h3>
      <p>Until you decide, it is kept in this browser alone: the saved draft holds the words in brackets in its place.</p>
      <ul>
        {distinct.map((detail) => (
          <li key={`${detail.field} ${detail.text}`}>
            <p>
              {placeOfField(detail.field)}, {DETAIL_LABELS[detail.kind as DetailKind] ?? detail.kind}: <strong>{detail.text}</strong>
            </p>
            <div className="post-row-keys">
              <button type="button" className="press press-small" onClick={() => replace(detail, detail.suggestion)}>
                Replace by {detail.suggestion}
              </button>
              <button type="button" className="press press-small" onClick={() => replace(detail, '')}>
                Remove<span className="sr-only"> {detail.text}</span>
              </button>
              <button type="button" className="press press-small" onClick={() => keep(detail)}>
                Keep: nothing personal<span className="sr-only"> about {detail.text}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
