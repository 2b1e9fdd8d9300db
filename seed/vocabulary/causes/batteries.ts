import type { Cause } from '../../../shared/schemas/vocabulary';

export const batteriesCauses: Cause[] = [
  {
    slug: 'backup-battery-flat',
    label: 'Backup battery flat',
    meaning: 'Backup battery flat: to be described.',
    synonyms: [],
    role: 'backup-battery',
    mode: 'flat',
    usualProof: 'Backup battery flat: proof to be described.',
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
  {
    slug: 'backup-battery-leaked',
    label: 'Backup battery leaked',
    meaning: 'Backup battery leaked: to be described.',
    synonyms: [],
    role: 'backup-battery',
    mode: 'leaking',
    usualProof: 'Backup battery leaked: proof to be described.',
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
  {
    slug: 'battery-terminal-corroded',
    label: 'Battery terminals corroded',
    meaning: 'Battery terminals corroded: to be described.',
    synonyms: [],
    role: 'battery-terminal',
    mode: 'corroded',
    usualProof: 'Battery terminals corroded: proof to be described.',
    categories: ['handheld'],
  },
];
