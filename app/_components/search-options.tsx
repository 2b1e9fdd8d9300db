'use client';

import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useEffect } from 'react';
import { type SuggestedKind, type SuggestedPages, TYPED_LENGTH } from '../../shared/schemas/search';
import { TrpcProvider, useTrpc } from '../_trpc/client';
import type { SearchOption } from './site-search';

const KIND_WORDS: Record<SuggestedKind, string> = { symptom: 'symptom', device: 'device', part: 'part', fix: 'fix', case: 'case' };

type SearchOptionsProps = { text: string; onFound: (options: readonly SearchOption[]) => void };

/** Asks for pages that the text may mean and hands them up; shows nothing itself. */
export function SearchOptions(props: SearchOptionsProps) {
  return (
    <TrpcProvider>
      <Ask {...props} />
    </TrpcProvider>
  );
}

function Ask({ text, onFound }: SearchOptionsProps) {
  const trpc = useTrpc();
  const typed = useDeferredValue(text.trim().slice(0, TYPED_LENGTH));
  const { data } = useQuery({
    ...trpc.search.suggest.queryOptions({ text: typed }),
    placeholderData: keepPreviousData,
    enabled: typed !== '',
  });
  useEffect(() => onFound(data ? optionsOf(data) : []), [data, onFound]);
  return null;
}

function optionsOf({ groups }: SuggestedPages): SearchOption[] {
  return groups.flatMap(({ kind, items }) =>
    items.map(({ label, href, note }) => ({
      key: href,
      label,
      href,
      meaning: note === '' ? KIND_WORDS[kind] : `${KIND_WORDS[kind]}, ${note}`,
    })),
  );
}
