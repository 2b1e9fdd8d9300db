import { createTRPCClient, httpBatchLink } from '@trpc/client';
import type { AppRouter } from '../../server/trpc/root';

/** The procedures without a cache around them: for the bench, which keeps its own copies and must know at once when there is no network. */
export const plainClient = createTRPCClient<AppRouter>({ links: [httpBatchLink({ url: '/api/trpc', methodOverride: 'POST' })] });
