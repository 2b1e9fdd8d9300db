'use client';

import { type RefObject, useEffect, useState } from 'react';
import type { UsualPart } from '../../../../shared/domain/readings/usual-readings';
import type { CasebookSnapshot, CasebookWords } from '../../../../shared/domain/snapshot/casebook-snapshot';
import { plainClient } from '../../../_trpc/plain-client';
import type { BenchDb } from './bench-db';

export type DeviceData = { casebook: CasebookSnapshot; working: UsualPart[]; faulty: UsualPart[] };
type Versioned<T> = { version: string; value: T };
export type Loaded<T> = { value: T | null; missing: boolean };

/** Something that is on the device where it was loaded once, and brought up to date whenever there is a network. */
function useKept<T>(
  db: RefObject<BenchDb | null>,
  { key, load }: { key: string | null; load: (have: string | null) => Promise<Versioned<T | null>> },
): Loaded<T> {
  const [loaded, setLoaded] = useState<Loaded<T> & { key: string | null }>({ key: null, value: null, missing: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is loaded follows from the key
  useEffect(() => {
    if (key === null) return;
    let current = true;
    const show = (value: T | null, missing: boolean) => current && setLoaded({ key, value, missing });
    const bring = async () => {
      const kept = (await db.current?.get('data', key)) as Versioned<T> | undefined;
      if (kept) show(kept.value, false);
      if (!navigator.onLine) return kept ? undefined : show(null, true);
      try {
        const { version, value } = await load(kept?.version ?? null);
        if (value === null) return;
        show(value, false);
        await db.current?.put('data', { version, value }, key);
      } catch {
        if (!kept) show(null, true);
      }
    };
    void bring();
    const again = () => void bring();
    window.addEventListener('online', again);
    return () => {
      current = false;
      window.removeEventListener('online', again);
    };
  }, [key]);
  return loaded.key === key ? loaded : { value: null, missing: false };
}

/** Vocabulary and catalogue. `ready`: the browser's store is open. */
export function useWords(db: RefObject<BenchDb | null>, ready: boolean): Loaded<CasebookWords> {
  return useKept<CasebookWords>(db, {
    key: ready ? 'words' : null,
    load: async (have) => {
      const { version, words } = await plainClient.bench.words.query({ have });
      return { version, value: words };
    },
  });
}

/** What answers for one device. */
export function useDevice(db: RefObject<BenchDb | null>, device: string | null): Loaded<DeviceData> {
  return useKept<DeviceData>(db, {
    key: device === null ? null : `snapshot ${device}`,
    load: async (have) => {
      const { version, snapshot } = await plainClient.bench.snapshot.query({ device: device ?? '', have });
      return { version, value: snapshot };
    },
  });
}
