/** Address of a page of the log; what is left out is not written. */
export function logHref({ kind, part, page = 1 }: { kind: string | null; part: string | null; page?: number }): string {
  const params = new URLSearchParams();
  if (kind !== null) params.set('kind', kind);
  if (part !== null) params.set('part', part);
  if (page > 1) params.set('page', String(page));
  return params.size === 0 ? '/log' : `/log?${params}`;
}
