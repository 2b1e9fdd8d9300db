'use client';

import { FieldLinks } from './field-links';
import { useForm } from './form-context';

/** Everything that a moderator asked to have changed, linked to where it is changed. */
export function AskedChanges() {
  const { asked } = useForm();
  if (asked.length === 0) return null;
  return (
    <section className="asked-changes" aria-labelledby="asked-head">
      <h2 id="asked-head">Changes asked for</h2>
      <FieldLinks places={asked} />
    </section>
  );
}
