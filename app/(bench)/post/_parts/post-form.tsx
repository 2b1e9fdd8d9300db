'use client';

import { useMemo, useState } from 'react';
import { vocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import { askedNow } from '../../../../shared/domain/submission/asked-in-form';
import { checkSubmission } from '../../../../shared/domain/submission/check-submission';
import { deviceGroups } from '../../../_components/device-choice';
import { TrpcProvider } from '../../../_trpc/client';
import { AskedChanges } from './asked-changes';
import { DeviceSection } from './device-section';
import { EndingSection } from './ending-section';
import { FaultSummary } from './fault-summary';
import { FormProvider } from './form-context';
import type { FormStart } from './load-start';
import { OtherDraft } from './other-draft';
import { PhotoSection } from './photo-section';
import { SendSection } from './send-section';
import { SentPanel } from './sent-panel';
import { StepSection } from './step-section';
import { StorySection } from './story-section';
import { SymptomSection } from './symptom-section';
import { useDraft } from './use-draft';
import { useSend } from './use-send';

/** The form to post a case with. */
export function PostForm({ start }: { start: FormStart }) {
  return (
    <TrpcProvider>
      <Form start={start} />
    </TrpcProvider>
  );
}

function Form({ start }: { start: FormStart }) {
  const draft = useDraft(start);
  const send = useSend(draft);
  const [said, setSaid] = useState('');
  const words = useMemo(() => vocabularyWords(start.vocabulary, start.catalogue), [start]);
  const groups = useMemo(() => deviceGroups(start.catalogue), [start]);
  const { document, update } = draft;
  // Once it was tried to send it, what is mended leaves the list at once.
  const own = useMemo(
    () => (send.tries > 0 ? checkSubmission(words, document, start.month).problems : []),
    [send.tries, words, document, start.month],
  );
  const problems = own.length > 0 ? own : send.problems;
  const asked = useMemo(() => askedNow(start.asked, document.steps), [start.asked, document.steps]);
  const isAgain = draft.held.current.caseId !== null;

  if (send.sent) return <SentPanel sent={send.sent} />;
  if (draft.other)
    return <OtherDraft draft={draft.other} words={words} onGoOn={draft.goOn} onStart={draft.startOver} from={start.from} />;
  const submit = () => send.send(checkSubmission(words, document, start.month).problems.length === 0);
  const discard = async () => {
    await draft.discard();
    send.reset();
    setSaid('The draft is discarded. Nothing of it is kept.');
  };
  return (
    <FormProvider value={{ document, update, words, problems, asked, announce: setSaid }}>
      <form
        className="post-form"
        noValidate
        data-ready={draft.ready}
        onSubmit={(event) => {
          event.preventDefault();
          void submit();
        }}
      >
        {start.gone ? <p className="note">The draft of this address was discarded or sent. This is an empty form.</p> : null}
        <FaultSummary problems={problems} told={send.told} tries={send.tries} />
        <AskedChanges />
        <DeviceSection groups={groups} month={start.month} />
        <SymptomSection />
        <StepSection />
        <EndingSection />
        <PhotoSection mayPost={start.mayPost} store={draft.store} />
        <StorySection details={[...draft.details, ...send.details]} />
        <div className="post-trap" aria-hidden="true">
          <label htmlFor="post-website">Website</label>
          <input
            id="post-website"
            type="text"
            tabIndex={-1}
            autoComplete="off"
            value={send.website}
            onChange={(e) => send.setWebsite(e.target.value)}
          />
        </div>
        <SendSection
          here={start.here}
          signedIn={start.signedIn}
          mayPost={start.mayPost}
          isAgain={isAgain}
          sending={send.sending}
          state={draft.state}
          onDiscard={discard}
        />
        <p className="sr-only" role="status">
          {said}
        </p>
      </form>
    </FormProvider>
  );
}
