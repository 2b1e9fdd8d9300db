import { serveOptions } from './options.mjs';
import { requirePort } from './port.mjs';
import { preparePackages, settleDatabase } from './prepare.mjs';
import { prepareDatabase } from './prepare-database.mjs';
import { runMain } from './refusal.mjs';
import { serve } from './serve.mjs';

// npm run dev: the demo world, served from the sources; a page is made anew when one of them changes.
await runMain(async () => {
  const command = 'run dev';
  const at = serveOptions(process.argv.slice(2), { command, port: 4311 });
  settleDatabase();
  await requirePort({ ...at, command });
  await preparePackages();
  await prepareDatabase({ demo: true });
  return serve('dev', at).stopped;
});
