'use client';

import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useMemo } from 'react';
import { useTrpc } from '../../_trpc/client';
import { type SuggestedFinding, suggestedFindings } from './suggested-findings';

const ENTRIES = 6;
const KINDS: ('symptom' | 'check' | 'fix')[] = ['symptom', 'check', 'fix'];

/**
 * Findings that what was typed so far may mean. Where no entry carries all the words, the last one is taken for
 * an outcome: "clock puls" is the clock check, pulsing.
 */
export function useSuggestions(typed: string): SuggestedFinding[] {
  const trpc = useTrpc();
  const text = useDeferredValue(typed.trim().slice(0, 200));
  const cut = text.lastIndexOf(' ');
  const options = { placeholderData: keepPreviousData };
  const whole = useQuery({
    ...trpc.casebook.suggest.queryOptions({ text, kinds: KINDS, limit: ENTRIES }),
    ...options,
    enabled: text !== '',
  });
  const none = whole.data?.length === 0 && cut > 0;
  const head = useQuery({
    ...trpc.casebook.suggest.queryOptions({ text: text.slice(0, Math.max(cut, 0)), kinds: KINDS, limit: ENTRIES }),
    ...options,
    enabled: none,
  });
  return useMemo(() => {
    if (text === '') return [];
    return none ? suggestedFindings(head.data ?? [], text.slice(cut + 1)) : suggestedFindings(whole.data ?? []);
  }, [text, none, cut, head.data, whole.data]);
}
