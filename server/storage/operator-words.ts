import { type StorageFault, storageFaultOf } from './storage-fault';

const WORDS: Record<StorageFault, string> = {
  'disk-full': 'The disk is full, so nothing was stored. Make room where the database stands, and run it again.',
  'disk-read-only':
    'The database or its folder cannot be written, so nothing was stored. Make it writable for this user, and run it again.',
};

/** What whoever runs the machine has to do about an error that the disk is behind; null for any other error. */
export function operatorWords(error: unknown): string | null {
  const fault = storageFaultOf(error);
  return fault && WORDS[fault];
}
