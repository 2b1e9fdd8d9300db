import { runMain } from './refusal.mjs';
import { serveCasebook } from './serve-casebook.mjs';

// npm run demo: the casebook with the demo world in it.
await runMain(() => serveCasebook({ command: 'run demo', demo: true }));
