'use client';

import type { FoundDetail } from '../../../../shared/schemas/submission';
import { SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { DetailList } from './detail-list';
import { Field } from './field';
import { useForm } from './form-context';

/** The story in one's own words, and the personal details found anywhere in the form. */
export function StorySection({ details }: { details: readonly FoundDetail[] }) {
  const { document, update } = useForm();
  return (
    <section className="section" aria-labelledby="post-story-head">
      <h2 id="post-story-head">In your words</h2>
      <Field
        field="narrative"
        label="What the next person should know"
        hint="No names, contacts, serial numbers, places or exact dates: it is published without anything that says whose it is."
      >
        {(tie) => (
          <textarea
            {...tie}
            rows={6}
            maxLength={SUBMISSION_LIMITS.narrative}
            value={document.narrative}
            onChange={(e) => update((now) => ({ ...now, narrative: e.target.value }))}
          />
        )}
      </Field>
      <DetailList details={details} />
    </section>
  );
}
