import { z } from 'zod';
import { caseIdSchema } from '../../../shared/schemas/case';
import { PHOTO_LIMITS } from '../../../shared/schemas/photo';
import { takeTurn } from '../../accounts/limits';
import { randomCaseId } from '../../ids';
import { addPhoto, getPhotosOfCase, removePhoto } from '../../services/photo-add';
import { tidyPhotos } from '../../services/photo-tidy';
import { getSubmitLimits } from '../../services/submit-limits';
import { contributorProcedure, guestProcedure, router, signedInProcedure } from '../init';

const addInput = z.object({
  draftId: caseIdSchema,
  /** The file itself: only the door for files can hand it over. */
  bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.length <= PHOTO_LIMITS.bytes),
});

export const photoRouter = router({
  /** Adds a photo to a draft of one's own, drawn anew without anything but its pixels. */
  add: contributorProcedure.input(addInput).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().photo, ctx.actor.id);
    return addPhoto(ctx, { actor: ctx.actor, ...input, now: new Date(), newId: randomCaseId });
  }),

  /** Takes a photo out of a draft, and removes its files. */
  remove: signedInProcedure.input(z.object({ draftId: caseIdSchema, id: caseIdSchema })).mutation(({ ctx, input }) =>
    tidyPhotos(ctx, ctx.actor.id, () => removePhoto(ctx.db, ctx.actor, input)),
  ),

  /** The photos of a case: of a published one for everybody, otherwise for its owner and the moderators. */
  ofCase: guestProcedure.input(z.object({ id: caseIdSchema })).query(({ ctx, input }) => getPhotosOfCase(ctx.db, ctx.actor, input.id)),
});
