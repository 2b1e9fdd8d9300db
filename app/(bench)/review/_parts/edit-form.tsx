'use client';

import { useMutation } from '@tanstack/react-query';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import { vocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import { checkSubmission } from '../../../../shared/domain/submission/check-submission';
import type { DeviceCatalogue } from '../../../../shared/schemas/device';
import { REVIEW_LIMITS } from '../../../../shared/schemas/review';
import type { DraftDocument, FieldProblem, FoundDetail } from '../../../../shared/schemas/submission';
import type { Vocabulary } from '../../../../shared/schemas/vocabulary';
import { deviceGroups } from '../../../_components/device-choice';
import { TrpcProvider, useTrpc } from '../../../_trpc/client';
import { DeviceSection } from '../../post/_parts/device-section';
import { EndingSection } from '../../post/_parts/ending-section';
import { FaultSummary } from '../../post/_parts/fault-summary';
import { FormProvider } from '../../post/_parts/form-context';
import { StepSection } from '../../post/_parts/step-section';
import { StorySection } from '../../post/_parts/story-section';
import { SymptomSection } from '../../post/_parts/symptom-section';

type EditFormProps = {
  id: string;
  seen: string;
  document: DraftDocument;
  published: boolean;
  vocabulary: Vocabulary;
  catalogue: DeviceCatalogue;
  month: string;
  back: string;
  queue: string;
};

/** The form of a case in a moderator's hands: accepting or correcting it with what stands in it. */
export function EditForm(props: EditFormProps) {
  return (
    <TrpcProvider>
      <Form {...props} />
    </TrpcProvider>
  );
}

function Form({ id, seen, document: first, published, vocabulary, catalogue, month, back, queue }: EditFormProps) {
  const router = useRouter();
  const words = useMemo(() => vocabularyWords(vocabulary, catalogue), [vocabulary, catalogue]);
  const groups = useMemo(() => deviceGroups(catalogue), [catalogue]);
  const [document, setDocument] = useState(first);
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [found, setFound] = useState<{ problems: FieldProblem[]; details: FoundDetail[]; told: string | null; tries: number }>({
    problems: [],
    details: [],
    told: null,
    tries: 0,
  });
  const save = useSave(published);
  const submit = async () => {
    const problems = checkSubmission(words, document, month).problems;
    const outcome = problems.length > 0 ? { problems, details: [], told: null } : await save.send({ id, seen, document, text });
    if (outcome === null) return router.push(published ? `${back}?done=corrected` : queue);
    setFound((now) => ({ ...outcome, tries: now.tries + 1 }));
  };
  return (
    <FormProvider value={{ document, update: (change) => setDocument(change), words, problems: found.problems, asked: [], announce: setSaid }}>
      <form
        className="post-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (!save.pending) void submit();
        }}
      >
        <FaultSummary problems={found.problems} told={found.told} tries={found.tries} />
        <DeviceSection groups={groups} month={month} />
        <SymptomSection />
        <StepSection />
        <EndingSection />
        <StorySection details={found.details} />
        <section className="section post-send" aria-labelledby="edit-send-head">
          <h2 id="edit-send-head">{published ? 'Publish this version' : 'Accept it like this'}</h2>
          <div className="post-field">
            <label htmlFor="edit-text">Why, for whoever posted it</label>
            <textarea id="edit-text" rows={2} maxLength={REVIEW_LIMITS.text} value={text} onChange={(e) => setText(e.target.value)} />
          </div>
          <button type="submit" className="press press-main" aria-disabled={save.pending}>
            {published ? 'Publish the correction' : 'Accept with these edits'}
          </button>
          <Link href={back} prefetch={false}>
            Leave it as it was
          </Link>
        </section>
        <p className="sr-only" role="status">
          {said}
        </p>
      </form>
    </FormProvider>
  );
}

type Sent = { id: string; seen: string; document: DraftDocument; text: string };

/** Sends the form; null where it was done, otherwise what is wrong with it. */
function useSave(published: boolean) {
  const trpc = useTrpc();
  const accept = useMutation(trpc.review.acceptEdited.mutationOptions());
  const correct = useMutation(trpc.review.correct.mutationOptions());
  const send = async (input: Sent) => {
    const none = { problems: [], details: [], told: null };
    if (published && input.text.trim().length < 5) return { ...none, told: 'Say in a sentence why it is corrected.' };
    try {
      const outcome = await (published ? correct : accept).mutateAsync(input);
      if (outcome.status === 'done') return null;
      if (outcome.status === 'problems') return { ...none, problems: outcome.problems };
      if (outcome.status === 'refused') return { ...none, told: Object.values(outcome.fields).join(' ') };
      return { ...none, details: outcome.details, told: 'Something in it may say who somebody is. Decide about each below.' };
    } catch (error) {
      return { ...none, told: error instanceof Error ? error.message : 'No answer came. Try again.' };
    }
  };
  return { send, pending: accept.isPending || correct.isPending };
}
