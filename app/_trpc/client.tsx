'use client';

import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createTRPCClient, httpBatchLink } from '@trpc/client';
import { createTRPCContext } from '@trpc/tanstack-react-query';
import { type ReactNode, useState } from 'react';
import type { AppRouter } from '../../server/trpc/root';

const context = createTRPCContext<AppRouter>();

/** The typed proxy of all procedures, for use with `useQuery(trpc.lookup.ask.queryOptions(question))`. */
export const useTrpc = context.useTRPC;

/** Answers stay good this long: the casebook changes when a case is accepted, not by the second. */
const STALE_AFTER = 60_000;

/** Gives the components below it the procedures over HTTP, with answers kept in the page. */
export function TrpcProvider({ children }: { children: ReactNode }) {
  const [queryClient] = useState(() => new QueryClient({ defaultOptions: { queries: { staleTime: STALE_AFTER, retry: 1 } } }));
  const [client] = useState(() =>
    createTRPCClient<AppRouter>({ links: [httpBatchLink({ url: '/api/trpc', methodOverride: 'POST' })] }),
  );
  return (
    <QueryClientProvider client={queryClient}>
      <context.TRPCProvider trpcClient={client} queryClient={queryClient}>
        {children}
      </context.TRPCProvider>
    </QueryClientProvider>
  );
}
