import type { TestProject } from 'vitest/node';
import { preparePages } from '../../../server/start/prepare.mjs';
import { demoDatabase } from './demo-database';
import { startServer } from './start-server';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the server with the demo world, without a slash at its end. Tests that change data start their own. */
    serverUrl: string;
  }
}

/** Builds the pages if the sources changed, and serves them on the demo world while the browser tests run. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  // Neither needs the other, and the seeding uses one processor.
  const [database] = await Promise.all([demoDatabase(), preparePages()]);
  const server = await startServer(database.file);
  project.provide('serverUrl', server.url);
  return async () => {
    await server.stop();
    database.remove();
  };
}
