'use client';

import Form from 'next/form';
import { useRouter } from 'next/navigation';
import { type ReactNode, useId, useState, useTransition } from 'react';
import type { Question } from '../../_address/question';
import { Counting } from '../../_components/counting';
import { FindingBox } from './finding-box';

type FindingFormProps = {
  /** The question that the finding is added to. */
  question: Question;
  label: string;
  /** What the form sends along, and what stands below the box. */
  children: ReactNode;
};

/** The form of a finding to be added: what is chosen from the list leads on at once. */
export function FindingForm({ question, label, children }: FindingFormProps) {
  const id = useId();
  const router = useRouter();
  const [pending, start] = useTransition();
  // Counts what was chosen: the box starts afresh after each.
  const [chosen, setChosen] = useState(0);
  const choose = (href: string) => {
    setChosen((count) => count + 1);
    start(() => router.push(href, { scroll: false }));
  };
  return (
    <Form action="/" className="add-form" scroll={false}>
      <Counting shown={pending} />
      <label htmlFor={`${id}-box`}>{label}</label>
      <FindingBox key={chosen} id={id} question={question} onChoose={choose} />
      {children}
    </Form>
  );
}
