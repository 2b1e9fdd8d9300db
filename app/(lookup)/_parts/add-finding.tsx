'use client';

import Form from 'next/form';
import { useRouter } from 'next/navigation';
import { useId, useState, useTransition } from 'react';
import { withAside, withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { Counting } from '../../_components/counting';
import { TrpcProvider } from '../../_trpc/client';
import { FindingBox } from './finding-box';
import { HiddenQuestion } from './hidden-question';
import type { SuggestedFinding } from './suggested-findings';

type AddFindingProps = {
  question: Question;
  label: string;
  /** The stretch of the words that the chosen finding stands for; it is then set aside. */
  standsFor?: string;
};

/**
 * Adds a finding from the vocabulary with type-ahead. Without scripts it is a plain form whose words join the
 * question's, beside a link to all the words that the casebook knows.
 */
export function AddFinding({ question, label, standsFor }: AddFindingProps) {
  const id = useId();
  const router = useRouter();
  const [pending, start] = useTransition();
  // Counts what was chosen: the box starts afresh after each.
  const [chosen, setChosen] = useState(0);
  const base = standsFor === undefined ? question : withAside(question, standsFor);

  const choose = ({ finding }: SuggestedFinding) => {
    setChosen((count) => count + 1);
    start(() => router.push(questionHref('/', withFinding(base, finding)), { scroll: false }));
  };

  return (
    <Form action="/" className="add-form" scroll={false}>
      <Counting shown={pending} />
      <label htmlFor={`${id}-box`}>{label}</label>
      <TrpcProvider>
        <FindingBox key={chosen} id={id} onChoose={choose} />
      </TrpcProvider>
      <HiddenQuestion question={base} leaveOut={['why']} />
      <p className="small">
        <a href={questionHref('/words', base)} className="row-link">
          All the words that can be used
        </a>
      </p>
    </Form>
  );
}
