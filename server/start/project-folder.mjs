import { fileURLToPath } from 'node:url';

/** Absolute path of the project. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');
