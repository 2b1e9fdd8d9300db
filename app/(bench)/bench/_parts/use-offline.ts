'use client';

import { useEffect } from 'react';

/** Puts the page, and what it needs, on the device: from then on it opens without a network. */
export function useOffline(): void {
  useEffect(() => {
    if (!('serviceWorker' in navigator)) return;
    // Without it the bench works all the same while there is a network.
    navigator.serviceWorker.register('/service-worker.js', { scope: '/', updateViaCache: 'none' }).catch(() => {});
  }, []);
}
