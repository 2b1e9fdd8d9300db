// `tsx accept-until-killed.ts <database url> <case id> <n>`: accepts a case, and dies without warning right before its nth writing
// statement, the COMMIT counted; 0 lives. Prints how many there were.
import type { SqlDriverAdapter, SqlDriverAdapterFactory, SqlQuery, Transaction } from '@prisma/driver-adapter-utils';
import { PrismaClient } from '../../../prisma/generated/client';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { contentHash } from '../../../server/content-hash';
import { createDb } from '../../../server/db';
import { findCase } from '../../../server/repositories/case-repository';
import { acceptCase } from '../../../server/services/review/accept-case';
import { createSqliteAdapter } from '../../../server/sqlite-adapter';

const [url = '', id = '', die = '0'] = process.argv.slice(2);
let writes = 0;

/** Counts writing statements, and kills this very process before the one that was named: nothing is cleaned up. */
function before(query: SqlQuery): void {
  if (!/^\s*(insert|update|delete|commit)/i.test(query.sql)) return;
  writes += 1;
  if (writes === Number(die)) process.kill(process.pid, 'SIGKILL');
}

function watched(factory: SqlDriverAdapterFactory): SqlDriverAdapterFactory {
  const watch = <T extends SqlDriverAdapter | Transaction>(inner: T): T => ({
    ...inner,
    queryRaw: (query: SqlQuery) => {
      before(query);
      return inner.queryRaw(query);
    },
    executeRaw: (query: SqlQuery) => {
      before(query);
      return inner.executeRaw(query);
    },
  });
  return {
    ...factory,
    connect: async () => {
      const adapter = await factory.connect();
      const startTransaction: SqlDriverAdapter['startTransaction'] = async (level) => watch(await adapter.startTransaction(level));
      return { ...watch(adapter), startTransaction };
    },
  };
}

const plain = createDb(url);
const { model } = await loadCasebook(plain);
const seen = contentHash((await findCase(plain, id))?.content);
await plain.$disconnect();
const db = new PrismaClient({ adapter: watched(createSqliteAdapter(url)) });
const outcome = await acceptCase(db, model, { actor: { id: 'mod', role: 'moderator' }, id, seen, now: new Date('2026-05-02') });
console.log(JSON.stringify({ writes, status: outcome.status }));
await db.$disconnect();
