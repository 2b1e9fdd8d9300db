import { onNewEnoughNode } from './node-version.mjs';

onNewEnoughNode(() => import('./run-dev.mjs'));
