/** Where a page of results ended: what the last case was sorted by, its id, and how many were shown up to there. */
export type SearchCursor = { key: number | string; id: string; seen: number };

/** The cursor as a short text for addresses. */
export function writeCursor({ key, id, seen }: SearchCursor): string {
  return Buffer.from(JSON.stringify([key, id, seen])).toString('base64url');
}

/** Null for anything that no search has written: such a list starts at its beginning. */
export function readCursor(text: string | null): SearchCursor | null {
  if (text === null) return null;
  try {
    const parts: unknown = JSON.parse(Buffer.from(text, 'base64url').toString());
    if (!Array.isArray(parts) || parts.length !== 3) return null;
    const [key, id, seen] = parts as unknown[];
    const isKey = typeof key === 'string' || (typeof key === 'number' && Number.isFinite(key));
    return isKey && typeof id === 'string' && Number.isInteger(seen) && (seen as number) >= 0 ? { key, id, seen: seen as number } : null;
  } catch {
    return null;
  }
}
