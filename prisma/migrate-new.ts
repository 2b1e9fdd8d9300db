// `npm run migrate:new -- <name>`: writes what schema.prisma adds to the migrations as a new one. It applies nothing.
import { writeMigration } from './migrations';

try {
  const folder = await writeMigration({ name: process.argv.slice(2).join(' '), now: new Date() });
  console.log(
    folder === null
      ? 'The migrations already produce the schema: nothing to write.'
      : `Wrote prisma/migrations/${folder}/migration.sql: read it, then run npm run migrate.`,
  );
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
