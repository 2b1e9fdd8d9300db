import { runMain } from './refusal.mjs';
import { serveCasebook } from './serve-casebook.mjs';

// npm start: the casebook for real use. It starts with the vocabulary and no cases.
await runMain(() => serveCasebook({ command: 'start', demo: false }));
