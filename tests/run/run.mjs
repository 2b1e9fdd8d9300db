import { onNewEnoughNode } from '../../server/start/node-version.mjs';

onNewEnoughNode(() => import('./run-tests.mjs'));
