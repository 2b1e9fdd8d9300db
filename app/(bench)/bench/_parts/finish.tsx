'use client';

import { useState } from 'react';
import { draftFromLog } from '../../../../shared/domain/bench/draft-from-log';
import { emptyDraft } from '../../../../shared/schemas/submission';
import { newDraftId, newRowKey, readLocalDraft, writeLocalDraft } from '../../post/_parts/local-draft';
import { SendWorking } from './send-working';
import { useUnit } from './unit-context';

type FinishProps = { onClose: (closed: boolean) => void; onRemove: () => void };

/** One press hands the whole log to the posting form; for a working unit, its readings to review. */
export function Finish({ onClose, onRemove }: FinishProps) {
  const { unit, entries } = useUnit();
  const [sure, setSure] = useState(false);
  return (
    <section className="section no-print" aria-labelledby="bench-finish-head">
      <h2 id="bench-finish-head">Finish</h2>
      {unit.working ? <SendWorking onSent={() => onClose(true)} /> : <PostCase onPosted={() => onClose(true)} />}
      <p className="bench-keys">
        <a className="press" href={`/bench/sheet?unit=${unit.id}`}>
          Bench sheet to print
        </a>
        <a className="press" href={`/bench/sheet?unit=${unit.id}&of=report`}>
          Log as a report
        </a>
        <button type="button" className="press" onClick={() => onClose(unit.closedAt === null)}>
          {unit.closedAt === null ? 'Put it away' : 'Open it again'}
        </button>
        {sure ? (
          <>
            <button type="button" className="press" onClick={onRemove}>
              Yes, remove {entries.length} entries
            </button>
            <button type="button" className="press" onClick={() => setSure(false)}>
              Keep it
            </button>
          </>
        ) : (
          <button type="button" className="press" onClick={() => setSure(true)}>
            Remove this log
          </button>
        )}
      </p>
    </section>
  );
}

function PostCase({ onPosted }: { onPosted: () => void }) {
  const { unit, entries, words } = useUnit();
  const [asked, setAsked] = useState(false);
  const [told, setTold] = useState<string | null>(null);
  const post = (over: boolean) => {
    const other = readLocalDraft();
    const isOther = other !== null && JSON.stringify({ ...other.document, month: '' }) !== JSON.stringify(emptyDraft(''));
    if (isOther && !over) return setAsked(true);
    const month = new Date().toISOString().slice(0, 7);
    const document = draftFromLog(words, { unit, entries, month, newKey: newRowKey });
    if (!writeLocalDraft({ id: newDraftId(), base: null, caseId: null, from: '', document })) {
      return setTold('This browser keeps nothing, so the log cannot be handed to the form. Allow it to store data for this site.');
    }
    onPosted();
    window.location.assign('/post');
  };
  return (
    <>
      <p className="soft">The form takes over everything that is entered here, failed attempts included; you can still change all of it.</p>
      {told ? (
        <p className="bench-told" role="alert">
          {told}
        </p>
      ) : null}
      {asked ? (
        <div className="note" role="alert">
          <p>This browser holds another unfinished case that was not sent.</p>
          <p className="bench-keys">
            <a className="press" href="/post">
              Look at that one first
            </a>
            <button type="button" className="press" onClick={() => post(true)}>
              Discard it and post this log
            </button>
          </p>
        </div>
      ) : (
        <p>
          <button type="button" className="press press-main bench-post" onClick={() => post(false)}>
            Post this case
          </button>
        </p>
      )}
    </>
  );
}
