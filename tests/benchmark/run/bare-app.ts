import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fingerprint } from '../../../server/start/fingerprint.mjs';
import { projectFolder } from '../../../server/start/project-folder.mjs';
import { lastLines, runScript } from '../../../server/start/run-command.mjs';
import { unlessDone } from '../../../server/start/stamp.mjs';

const FILES = {
  'package.json': '{ "private": true, "type": "module" }',
  'next.config.mjs': `export default { poweredByHeader: false, turbopack: { root: ${JSON.stringify(projectFolder)} } };`,
  'app/layout.jsx': 'export default function Layout({ children }) { return <html lang="en"><body>{children}</body></html>; }',
  'app/page.jsx': "export const dynamic = 'force-dynamic';\nexport default function Page() { return <p>{new Date().toISOString()}</p>; }",
};

/** Builds an application of one page that says the time, with the same framework, unless it stands there already; returns its folder. */
export async function buildBareApp(folder: string): Promise<string> {
  const app = join(folder, 'bare-app');
  const state = fingerprint(['package-lock.json'], [JSON.stringify(FILES), process.version]);
  await unlessDone(join(app, 'made-from'), state, async () => {
    rmSync(app, { recursive: true, force: true });
    mkdirSync(join(app, 'app'), { recursive: true });
    for (const [name, text] of Object.entries(FILES)) writeFileSync(join(app, name), text);
    const { code, output } = await runScript(join(projectFolder, 'node_modules/next/dist/bin/next'), ['build', app]);
    if (code !== 0) throw new Error(`The bare application could not be built:\n${lastLines(output, 30)}`);
  });
  return app;
}
