const kebab = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Words that say nothing about what a file is for. */
const empty = /(^|[-_.])(utils?|misc|helpers?)([-_.]|$)/;

/** Files whose name a tool or a custom of the trade prescribes. */
const prescribed = new Set(['README.md', 'DEVELOPERS.md', 'LICENSE', 'LICENSE-DATA', 'CONTRIBUTING.md', 'CHANGELOG.md', 'SECURITY.md']);

/** A folder's name without the marks that the pages' router gives a meaning to. */
function plainFolder(name: string): string {
  return name.replace(/^\(\.*|\)$|^\[+(\.\.\.)?|\]+$|^[._]/g, '');
}

/** Folders that are named after a moment and a purpose by the migration writer. */
const migration = /^\d{14}_[a-z0-9_]+$/;

/**
 * What is wrong with a path's names, or null. Folders and files are kebab-case; what follows a file's first dot
 * (`.test.ts`, `.config.ts`) is its kind.
 */
export function nameFault(path: string): string | null {
  const parts = path.split('/');
  const file = parts.pop() ?? '';
  if (prescribed.has(file) && parts.length === 0) return null;
  const folder = parts.find((name) => !kebab.test(plainFolder(name)) && !migration.test(name));
  if (folder !== undefined) return `${path}: the folder ${folder} is not kebab-case`;
  const stem = file.replace(/^\./, '').split('.')[0] ?? '';
  if (!kebab.test(stem) && !prescribed.has(file) && stem !== 'migration_lock') return `${path}: the file is not kebab-case`;
  const vague = [...parts, file].find((name) => empty.test(name));
  return vague === undefined ? null : `${path}: "${vague}" says nothing about what is in it`;
}
