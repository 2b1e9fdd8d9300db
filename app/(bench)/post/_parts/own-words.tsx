'use client';

import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { withFindings } from '../../../../shared/domain/submission/draft-from-question';
import type { Finding } from '../../../../shared/schemas/finding';
import { SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { useTrpc } from '../../../_trpc/client';
import { joinWords } from '../../../_components/words';
import { EVEN_OFFLINE } from './even-offline';
import { Field } from './field';
import { useForm } from './form-context';
import { newRowKey } from './local-draft';

type Unsure = { text: string; choices: { kind: string; id: string; value: string; label: string; valueLabel: string }[] };

/** A box whose words are read into symptoms, checks and fixes; what could not be read stays in it. */
export function OwnWords() {
  const { document, update, announce } = useForm();
  const trpc = useTrpc();
  const client = useQueryClient();
  const [told, setTold] = useState('');
  const [unsure, setUnsure] = useState<Unsure[]>([]);
  const [reading, setReading] = useState(false);

  const tell = (text: string) => {
    setTold(text);
    announce(text);
  };
  const read = async () => {
    const text = document.ownWords.trim();
    if (text === '') return tell('Write what you saw first, such as: grey screen, no sound.');
    setReading(true);
    try {
      const { findings, unread, ambiguous, device } = await client.fetchQuery(
        trpc.submission.readWords.queryOptions({ text }, EVEN_OFFLINE),
      );
      update((now) => ({
        ...withFindings(
          now,
          findings.map(({ kind, id, value }) => ({ kind, id, value }) as Finding),
          newRowKey,
        ),
        device: now.device || (device ?? ''),
        // Typed on while it was read: then all of it stays.
        ownWords: now.ownWords.trim() === text ? unread.join(', ') : now.ownWords,
      }));
      setUnsure(ambiguous);
      const got = findings.map((f) => `${f.label} ${f.valueLabel}`);
      tell(
        `${got.length > 0 ? `Read: ${joinWords(got)}.` : 'Nothing could be read.'}${unread.length > 0 ? ' What is left in the box was not read: choose from the list below, or propose it.' : ''}`,
      );
    } catch {
      tell('The words could not be read just now. They are kept: try again, or choose from the list below.');
    }
    setReading(false);
  };
  const settle = (span: Unsure, choice: Unsure['choices'][number] | null) => {
    setUnsure((now) => now.filter((other) => other !== span));
    if (choice)
      update((now) => withFindings(now, [{ kind: choice.kind, id: choice.id, value: choice.value } as Finding], newRowKey));
  };

  return (
    <>
      <Field
        field="ownWords"
        label="In your own words"
        hint="Checks and fixes may stand here, too. Nothing of it is published as it stands: it is read into the lists below."
      >
        {(tie) => (
          <textarea
            {...tie}
            rows={2}
            maxLength={SUBMISSION_LIMITS.own}
            placeholder="grey screen, clock present"
            value={document.ownWords}
            onChange={(e) => update((now) => ({ ...now, ownWords: e.target.value }))}
          />
        )}
      </Field>
      <button type="button" className="press" disabled={reading} onClick={() => void read()}>
        Read these words
      </button>
      {told === '' ? null : <p className="soft">{told}</p>}
      {unsure.map((span) => (
        <div key={span.text} className="post-choice">
          <p>“{span.text}” can mean:</p>
          {span.choices.map((choice) => (
            <button
              key={`${choice.id}.${choice.value}`}
              type="button"
              className="press press-small"
              onClick={() => settle(span, choice)}
            >
              {choice.label}: {choice.valueLabel}
            </button>
          ))}
          <button type="button" className="press press-small" onClick={() => settle(span, null)}>
            none of these
          </button>
        </div>
      ))}
    </>
  );
}
