import type { LookUpFigures, LookUpResult } from '../../schemas/look-up';

/** A look-up with the beginnings of the similar cases' texts, by id; empty where there is none. */
export function withExcerpts(figures: LookUpFigures, excerpts: ReadonlyMap<string, string>): LookUpResult {
  return { ...figures, similar: figures.similar.map((entry) => ({ ...entry, excerpt: excerpts.get(entry.id) ?? '' })) };
}
