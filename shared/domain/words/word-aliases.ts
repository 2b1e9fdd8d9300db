import type { WordEdit, WordKind } from '../../schemas/word-edit';

/** For each kind, merged entries by slug, with the entry that stands for each now. */
export type WordAliases = Readonly<Record<WordKind, ReadonlyMap<string, string>>>;

export const NO_ALIASES: WordAliases = { symptom: new Map(), check: new Map(), cause: new Map(), fix: new Map() };

/** The aliases that merges make, in their order: where B was merged into C after A into B, both lead to C. */
export function aliasesOf(edits: readonly WordEdit[]): WordAliases {
  const aliases = { symptom: new Map(), check: new Map(), cause: new Map(), fix: new Map() } satisfies Record<
    WordKind,
    Map<string, string>
  >;
  for (const edit of edits) {
    if (edit.act !== 'merge') continue;
    const map: Map<string, string> = aliases[edit.kind];
    const into = map.get(edit.into) ?? edit.into;
    if (map.has(edit.from) || into === edit.from) continue;
    for (const [from, to] of map) if (to === edit.from) map.set(from, into);
    map.set(edit.from, into);
  }
  return aliases;
}

/** The slug by which an entry goes now. */
export const currentSlug = (aliases: WordAliases, kind: WordKind, slug: string): string => aliases[kind].get(slug) ?? slug;
