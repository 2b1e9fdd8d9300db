'use client';

import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { PHOTO_LIMITS, type PhotoOutcome } from '../../../../shared/schemas/photo';
import { useTrpc } from '../../../_trpc/client';
import { EVEN_OFFLINE } from './even-offline';
import { useForm } from './form-context';

const NO_ANSWER = 'No answer came, so it was not added. Add it again when the connection is back.';

/**
 * Adds photos to the stored draft and takes them out. `told` says what went wrong, by file.
 *
 * @param store stores the draft, which holds the photos, where that was not done yet; its id, or null where it cannot be.
 */
export function usePhotos(store: () => Promise<string | null>) {
  const { document, update, announce } = useForm();
  const trpc = useTrpc();
  const { mutateAsync: takeOut } = useMutation(trpc.photo.remove.mutationOptions(EVEN_OFFLINE));
  const [adding, setAdding] = useState(0);
  const [told, setTold] = useState<string[]>([]);

  const add = async (files: readonly File[]) => {
    const room = PHOTO_LIMITS.count - document.photos.length;
    const tooMany = files.slice(room).map((file) => `${file.name}: a case takes ${PHOTO_LIMITS.count} photos.`);
    const taken = files.slice(0, room);
    setTold(tooMany);
    setAdding(taken.length);
    const draftId = taken.length > 0 ? await store() : null;
    for (const file of taken) {
      const outcome = draftId === null ? refusal(NO_ANSWER) : await send(draftId, file);
      if (outcome.kind === 'refused') setTold((now) => [...now, `${file.name}: ${outcome.reason}`]);
      else {
        update((now) => ({ ...now, photos: [...now.photos, { id: outcome.id, alt: '' }] }));
        announce(`${file.name} is added. Say what it shows.`);
      }
      setAdding((now) => now - 1);
    }
  };
  const remove = async (id: string) => {
    setTold([]);
    try {
      const draftId = await store();
      if (draftId !== null) await takeOut({ draftId, id });
      update((now) => ({ ...now, photos: now.photos.filter((photo) => photo.id !== id) }));
      announce('The photo is taken out.');
    } catch {
      setTold(['The photo could not be taken out just now: no answer came. Try again.']);
    }
  };
  return { add, remove, adding, told };
}

const refusal = (reason: string): PhotoOutcome => ({ kind: 'refused', reason });

async function send(draftId: string, file: File): Promise<PhotoOutcome> {
  if (file.size > PHOTO_LIMITS.bytes) {
    return refusal(`it is larger than ${PHOTO_LIMITS.bytes / 1_000_000} MB. Save a smaller copy of it, and add that.`);
  }
  try {
    const answer = await fetch(`/api/photos?draft=${draftId}`, { method: 'POST', body: file });
    return (await answer.json()) as PhotoOutcome;
  } catch {
    return refusal(NO_ANSWER);
  }
}
