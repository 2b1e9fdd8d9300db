import type { Cause } from '../../../shared/schemas/vocabulary';

export const noneCauses: Cause[] = [
  {
    slug: 'no-fault-found',
    label: 'No fault found',
    meaning: 'The unit works, and nothing wrong could be found.',
    synonyms: ['nff', 'nothing wrong', 'no fault', 'works fine after all', 'could not reproduce'],
    role: 'no-part',
    mode: 'no fault found',
    usualProof: "A soak run of some hours shows no fault, on the owner's supply and cable too.",
    categories: ['home-computer', 'console', 'handheld', 'arcade-board', 'monitor', 'drive'],
  },
];
