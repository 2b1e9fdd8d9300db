import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../server/start/project-folder.mjs';

/** Files of the app folder that answer at an address of their own, and what stands at its end where that is not the folder. */
const ANSWERING: Record<string, string> = {
  'page.tsx': '',
  'route.ts': '',
  'sitemap.ts': '/sitemap.xml',
  'robots.ts': '/robots.txt',
  'manifest.ts': '/manifest.webmanifest',
  'icon.svg': '/icon.svg',
  'favicon.ico': '/favicon.ico',
};

/**
 * Every address that the app folder answers at, as a pattern with its dynamic parts in brackets. Groups `(x)` are no part of an
 * address, and what begins with an underscore is none (Next.js documentation, "Project structure").
 */
export function everyRoute(): string[] {
  const found: string[] = [];
  const walk = (folder: string, address: string) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const isGroup = entry.name.startsWith('(');
      if (entry.isDirectory() && !entry.name.startsWith('_')) {
        walk(join(folder, entry.name), isGroup ? address : `${address}/${entry.name}`);
      }
      const end = ANSWERING[entry.name];
      if (entry.isFile() && end !== undefined) found.push(`${address}${end}` || '/');
    }
  };
  walk(join(projectFolder, 'app'), '');
  return found.sort();
}
