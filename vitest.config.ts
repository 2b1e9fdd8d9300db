import { defineConfig } from 'vitest/config';

const setupFiles = ['tests/setup/no-console-errors.ts'];

/** Which tests need what. `npm test` runs the projects one after another; `npx vitest run <file>` runs one file. */
export default defineConfig({
  resolve: { alias: { 'server-only': new URL('./tests/setup/server-only.ts', import.meta.url).pathname } },
  test: {
    // Left alone, a machine with two processors would get one worker.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/{prisma,server,architecture,browser}/**'],
          setupFiles,
        },
      },
      {
        extends: true,
        test: {
          name: 'server',
          include: ['tests/{prisma,server}/**/*.test.ts'],
          globalSetup: ['tests/setup/template-database.ts'],
          // Otherwise one would be kept in a file beside the default database.
          env: { SESSION_SECRET: 'only for tests: nothing is guarded by it' },
          setupFiles,
          testTimeout: 20_000,
          hookTimeout: 30_000,
        },
      },
      { extends: true, test: { name: 'architecture', include: ['tests/architecture/**/*.test.ts'], setupFiles } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/harness/global-setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
