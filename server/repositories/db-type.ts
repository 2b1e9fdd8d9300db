import type { Prisma } from '../../prisma/generated/client';

/** What every repository function takes first: the client, or a transaction of it. */
export type Db = Prisma.TransactionClient;
