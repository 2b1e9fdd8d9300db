'use client';

import { FlipIcon, RemoveIcon } from '../../../_components/icons';
import { EntryBox } from './entry-box';
import { Fault } from './field';
import { fieldId, useForm } from './form-context';
import { OwnWords } from './own-words';
import { Proposals } from './proposals';

/** What was seen: in one's own words, which are read, or from the vocabulary. */
export function SymptomSection() {
  const { document, update, words, announce } = useForm();
  const label = (slug: string) => words.symptoms.get(slug)?.label ?? slug;
  const set = (symptom: string, present: boolean) =>
    update((now) => ({
      ...now,
      symptoms: now.symptoms.some((s) => s.symptom === symptom)
        ? now.symptoms.map((s) => (s.symptom === symptom ? { symptom, present } : s))
        : [...now.symptoms, { symptom, present }],
    }));
  return (
    <section className="section" aria-labelledby="post-symptoms-head">
      <h2 id="post-symptoms-head">What was wrong</h2>
      <OwnWords />
      <div id={fieldId('symptoms')} tabIndex={-1}>
        <ul className="read" aria-label="Symptoms">
          {document.symptoms.map(({ symptom, present }) => (
            <li key={symptom} className={present ? 'tag' : 'tag tag-absent'}>
              <span className="tag-words">{label(symptom)}</span>
              <button
                type="button"
                className="tag-press"
                onClick={() => set(symptom, !present)}
                aria-label={`${label(symptom)} is ${present ? 'present' : 'absent'}; make it ${present ? 'absent' : 'present'}`}
              >
                <span className="tag-value">{present ? 'present' : 'absent'}</span> <FlipIcon />
              </button>
              <button
                type="button"
                className="tag-press"
                aria-label={`Take out ${label(symptom)}`}
                onClick={() => {
                  update((now) => ({ ...now, symptoms: now.symptoms.filter((s) => s.symptom !== symptom) }));
                  announce(`${label(symptom)} is taken out.`);
                }}
              >
                <RemoveIcon />
              </button>
            </li>
          ))}
        </ul>
        <Fault field="symptoms" below />
      </div>
      <EntryBox
        id={fieldId('symptom-box')}
        label="Add a symptom from the list"
        kinds={['symptom']}
        onChoose={(entry) => {
          set(entry.id, true);
          announce(`${entry.label} is added, present.`);
        }}
      />
      <Proposals kinds={['symptom']} />
      <label className="tick">
        <input
          type="checkbox"
          checked={document.symptomsComplete}
          onChange={(e) => update((now) => ({ ...now, symptomsComplete: e.target.checked }))}
        />
        <span>
          This is everything I saw <span className="soft">(what is not listed was not there)</span>
        </span>
      </label>
    </section>
  );
}
