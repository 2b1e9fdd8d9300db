import type { Cause } from '../../../shared/schemas/vocabulary';

export const noneCauses: Cause[] = [
  {
    slug: 'no-fault-found',
    label: 'No fault found',
    meaning: 'No fault found: to be described.',
    synonyms: [],
    role: 'no-part',
    mode: 'no fault found',
    usualProof: 'No fault found: proof to be described.',
    categories: ['home-computer', 'console', 'handheld', 'arcade-board', 'monitor', 'drive'],
  },
];
