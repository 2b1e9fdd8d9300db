'use client';

import { useEffect } from 'react';
import { withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { TrpcProvider } from '../../_trpc/client';
import type { FindingOption } from './finding-box';
import { useSuggestions } from './use-suggestions';

type FindingOptionsProps = { text: string; question: Question; onFound: (options: readonly FindingOption[]) => void };

/** Asks for findings that the text may mean and hands them up; shows nothing itself. */
export function FindingOptions(props: FindingOptionsProps) {
  return (
    <TrpcProvider>
      <Ask {...props} />
    </TrpcProvider>
  );
}

function Ask({ text, question, onFound }: FindingOptionsProps) {
  const found = useSuggestions(text);
  useEffect(() => {
    onFound(found.map(({ finding, label }) => ({ key: label, label, href: questionHref('/', withFinding(question, finding)) })));
  }, [found, question, onFound]);
  return null;
}
