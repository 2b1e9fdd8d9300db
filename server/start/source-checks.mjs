import { runScript } from './run-command.mjs';

/**
 * The checks that read the sources without running them.
 * @type {{ name: string, run: () => Promise<{ code: number, output: string }> }[]}
 */
export const sourceChecks = [
  {
    name: 'type check',
    run: async () => {
      // Writes next-env.d.ts and the types of the routes, which the sources refer to.
      const types = await runScript('node_modules/next/dist/bin/next', ['typegen']);
      return types.code === 0 ? runScript('node_modules/typescript/bin/tsc', ['-p', '.', '--pretty', 'false']) : types;
    },
  },
  {
    name: 'lint',
    run: () => runScript('node_modules/@biomejs/biome/bin/biome', ['lint', '--colors=off', '--diagnostic-level=error', '--max-diagnostics=100']),
  },
];
