import { builtinModules } from 'node:module';
import type { Import, SourceFile } from './source-files';

/** One thing that must never be: where it applies, and which imports break it. */
interface Arrow {
  rule: string;
  from: RegExp;
  breaks: (imported: Import, path: string) => boolean;
}

const inside =
  (...folders: string[]) =>
  ({ target, isPackage }: Import) =>
    !isPackage && folders.some((folder) => target === folder || target.startsWith(`${folder}/`));

const fromPackage =
  (...names: string[]) =>
  ({ target, isPackage }: Import) =>
    isPackage && names.some((name) => target === name || target.startsWith(`${name}/`));

const isNode = ({ target, isPackage }: Import) => isPackage && (target.startsWith('node:') || builtinModules.includes(target));

const isPrisma = (imported: Import) => inside('prisma')(imported) || fromPackage('@prisma', 'prisma')(imported);

/** Packages that only compute: numbers in, numbers out. */
const isNumeric = fromPackage('@stdlib');

/** The router's type: what the client's calls are checked against. */
const isRouterType = ({ target, typeOnly }: Import) => typeOnly && target === 'server/trpc/root';

/** The two doors from the interface to the server. */
const isDoor = (path: string) => /^app\/(api\/|_trpc\/server[./])/.test(path);

/** The never-arrows of the room map. */
export const arrows: Arrow[] = [
  {
    rule: 'shared/stats reaches nothing outside itself but numeric libraries',
    from: /^shared\/stats\//,
    breaks: (imported) => !inside('shared/stats')(imported) && !isNumeric(imported),
  },
  {
    rule: 'shared reaches no server, app, prisma, React or Node',
    from: /^shared\//,
    breaks: (imported) =>
      inside('server', 'app')(imported) ||
      isPrisma(imported) ||
      isNode(imported) ||
      fromPackage('react', 'react-dom', 'next', 'better-sqlite3', 'server-only', '@trpc')(imported),
  },
  { rule: 'server never reaches app', from: /^server\//, breaks: inside('app') },
  {
    rule: 'routers never reach Prisma or the database',
    from: /^server\/trpc\/routers\//,
    breaks: (imported) =>
      isPrisma(imported) || inside('server/sqlite', 'server/sqlite-adapter')(imported) || fromPackage('better-sqlite3')(imported),
  },
  {
    rule: 'repositories never reach routers or services',
    from: /^server\/repositories\//,
    breaks: inside('server/trpc', 'server/services', 'server/cli'),
  },
  {
    rule: "app never reaches server, but for the router's type and the two doors",
    from: /^app\//,
    breaks: (imported, path) => (inside('server')(imported) && !isRouterType(imported) && !isDoor(path)) || isPrisma(imported),
  },
  { rule: 'app, server and shared never reach tests or seed', from: /^(app|server|shared)\//, breaks: inside('tests', 'seed') },
  { rule: 'seed never reaches tests', from: /^seed\//, breaks: inside('tests') },
];

/** Names that make the same call give another answer, by room. */
const forbiddenNames = [
  { from: /^shared\/stats\//, names: ['Date', 'Math.random', 'performance'] },
  { from: /^shared\//, names: ['Math.random', 'Date.now', 'performance.now', 'crypto.randomUUID', 'process', 'process.env'] },
];

/** Every broken rule in a file, as a sentence that names file and culprit. */
export function violations(file: SourceFile): string[] {
  const broken = arrows
    .filter(({ from }) => from.test(file.path))
    .flatMap(({ rule, breaks }) =>
      file.imports.filter((imported) => breaks(imported, file.path)).map(({ target }) => `${file.path} imports ${target}: ${rule}`),
    );
  const used = forbiddenNames
    .filter(({ from }) => from.test(file.path))
    .flatMap(({ names }) => names.filter((name) => file.uses.has(name)))
    .map((name) => `${file.path} uses ${name}: what is computed there must not depend on clock, chance or surroundings`);
  return [...broken, ...new Set(used)];
}
