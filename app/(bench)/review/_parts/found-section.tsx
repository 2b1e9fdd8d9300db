import type { NearEntry } from '../../../../shared/domain/review/nearest-words';
import { DETAIL_LABELS, type DetailKind } from '../../../../shared/domain/anonymise/personal-detail';
import { placeOfField } from '../../../../shared/domain/submission/place-of-field';
import { formatPercent } from '../../../_components/format-figures';
import { MarkedText } from './marked-text';

type Mark = { field: string; kind: string; certainty: string; start: number; end: number };
type FoundSectionProps = {
  marks: Mark[];
  contradictions: { field: string; sentence: string }[];
  unknown: { field: string; reason: string }[];
  proposals: { kind: string; word: string; meaning: string; nearest: NearEntry[] }[];
};

/** What the machine found in the case itself: contradictions, personal details that were kept, words that are new. */
export function FoundSection({ marks, contradictions, unknown, proposals }: FoundSectionProps) {
  return (
    <>
      <section className="section" aria-labelledby="contradictions-head">
        <h2 id="contradictions-head">Does it hold together?</h2>
        {contradictions.length + unknown.length === 0 ? <p>Nothing in it contradicts anything else.</p> : null}
        <ul className="review-list">
          {unknown.map(({ field, reason }) => (
            <li key={field}>
              <strong>{placeOfField(field)}:</strong> {reason} It cannot be published before that is changed.
            </li>
          ))}
          {contradictions.map(({ field, sentence }) => (
            <li key={sentence}>
              <strong>{placeOfField(field)}:</strong> {sentence}
            </li>
          ))}
        </ul>
      </section>
      <section className="section" aria-labelledby="marks-head">
        <h2 id="marks-head">Does it say who somebody is?</h2>
        {marks.length === 0 ? (
          <p>Nothing was found that could.</p>
        ) : (
          <p>{marks.length === 1 ? 'One stretch was kept' : `${marks.length} stretches were kept`} by whoever posted it, marked where they stand:</p>
        )}
        <ul className="review-list">
          {marks.map((mark) => (
            <li key={`${mark.field} ${mark.start}`}>
              {placeOfField(mark.field)}: {DETAIL_LABELS[mark.kind as DetailKind] ?? mark.kind},{' '}
              {mark.certainty === 'direct' ? 'says it by itself' : 'may be one'}
            </li>
          ))}
        </ul>
      </section>
      {proposals.length > 0 ? (
        <section className="section" aria-labelledby="words-head">
          <h2 id="words-head">Words that it proposes</h2>
          <ul className="review-list">
            {proposals.map(({ kind, word, meaning, nearest }, i) => (
              <li key={`${kind} ${word}`}>
                <strong>
                  <MarkedText text={word} field={`proposals.${i}.word`} marks={marks} />
                </strong>{' '}
                ({kind}): <MarkedText text={meaning} field={`proposals.${i}.meaning`} marks={marks} />
                <p>{nearest.length === 0 ? 'No entry comes near it.' : 'Nearest entries:'}</p>
                <ul>
                  {nearest.map((entry) => (
                    <li key={entry.id}>
                      {entry.label}
                      {entry.by === entry.label ? '' : `, by “${entry.by}”`} ({formatPercent(entry.nearness)}): {entry.meaning}
                    </li>
                  ))}
                </ul>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}
