import { z } from 'zod';
import { caseIdSchema } from '../../../../shared/schemas/case';
import { draftDocumentSchema } from '../../../../shared/schemas/submission';

const STORED = 'post-draft';

const localDraftSchema = z.object({
  id: caseIdSchema,
  /** When the server last took it, in its own words; null where it never did. */
  base: z.string().nullable(),
  caseId: caseIdSchema.nullable(),
  /** Address that the form was opened at: the same look-up opened again goes on with it. */
  from: z.string(),
  document: draftDocumentSchema,
});

/** What this browser keeps of a form: all that the server does not hold, or holds without its personal details. */
export type LocalDraft = z.infer<typeof localDraftSchema>;

/** The kept form, or null: none, one that cannot be read, or a browser that keeps nothing. */
export function readLocalDraft(): LocalDraft | null {
  try {
    const parsed = localDraftSchema.safeParse(JSON.parse(window.localStorage.getItem(STORED) ?? 'null'));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** Keeps a form; false where the browser refuses. */
export function writeLocalDraft(draft: LocalDraft): boolean {
  try {
    window.localStorage.setItem(STORED, JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

export function removeLocalDraft(): void {
  try {
    window.localStorage.removeItem(STORED);
  } catch {
    // A browser that keeps nothing has nothing to remove.
  }
}

/** A fresh id for a draft: 16 letters and digits 2 to 7. */
export function newDraftId(): string {
  const bytes = window.crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => 'abcdefghijklmnopqrstuvwxyz234567'[byte & 31]).join('');
}

/** A fresh name for a row of the form. */
export function newRowKey(): string {
  return newDraftId().slice(0, 10);
}
