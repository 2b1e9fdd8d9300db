import type { Cause } from '../../../shared/schemas/vocabulary';

export const batteriesCauses: Cause[] = [
  {
    slug: 'backup-battery-flat',
    label: 'Backup battery flat',
    meaning: 'The backup battery is empty.',
    synonyms: ['dead battery', 'flat battery', 'empty backup battery', 'dead save battery'],
    role: 'backup-battery',
    mode: 'flat',
    usualProof: 'It measures below its limit, and saves are kept with a new one.',
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
  {
    slug: 'backup-battery-leaked',
    label: 'Backup battery leaked',
    meaning: 'The backup battery has leaked onto the board.',
    synonyms: ['leaked backup battery', 'battery leak', 'leaked nicad', 'battery damage'],
    role: 'backup-battery',
    mode: 'leaking',
    usualProof: 'Deposit stands around the battery.',
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
  {
    slug: 'battery-terminal-corroded',
    label: 'Battery terminals corroded',
    meaning: "The battery compartment's contacts are corroded.",
    synonyms: ['corroded battery terminals', 'corroded battery contacts', 'rusty battery springs'],
    role: 'battery-terminal',
    mode: 'corroded',
    usualProof: 'Voltage is lost between cells and board, and cleaning the contacts cures it.',
    categories: ['handheld'],
  },
];
