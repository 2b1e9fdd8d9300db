import { z } from 'zod';

/** Most characters of a type-ahead; what lies beyond is not looked at. */
export const TYPED_LENGTH = 200;

export const SUGGESTED_KINDS = ['symptom', 'device', 'part', 'fix', 'case'] as const;
export type SuggestedKind = (typeof SUGGESTED_KINDS)[number];

/** What the one search box offers while somebody types: groups in a fixed order, those without items left out. */
export type SuggestedPages = { groups: { kind: SuggestedKind; items: SuggestedPage[] }[] };

/** A page that what was typed may mean. `note` says in a few words what it is; empty where the label says it all. */
export type SuggestedPage = { label: string; href: string; note: string };

export const suggestPagesSchema = z.object({
  text: z.string().transform((text) => text.slice(0, TYPED_LENGTH)),
  /** Most items of each kind. */
  perKind: z.int().min(1).max(10).default(4),
});
export type SuggestPagesQuery = z.output<typeof suggestPagesSchema>;
