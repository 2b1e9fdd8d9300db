import { z } from 'zod';
import { LOG_KIND_LIST } from '../domain/log/log-kinds';

export const logKindSchema = z.enum(LOG_KIND_LIST);

/** Which entries to show: one kind or all, and which page of them, from 1. */
export const logFilterSchema = z.object({
  kind: logKindSchema.nullable().default(null),
  page: z.int().min(1).max(100_000).default(1),
});
export type LogFilter = z.output<typeof logFilterSchema>;

/** One thing that the entry says, in words: `label` of what, and what. */
export type LogDetail = { label: string; text: string };

/** An entry as everybody may see it: no person, no case, no time finer than a month, in no order within the month. */
export type PublicLogEntry = { key: string; month: string; says: string; details: LogDetail[] };

export type LogPage<Entry> = {
  entries: Entry[];
  page: number;
  pages: number;
  total: number;
  /** Entries of each kind that there is, whatever the filter. */
  counts: { kind: z.infer<typeof logKindSchema>; says: string; count: number }[];
  /** Number and hash of the newest entry, to note down; null where there is none. */
  checkpoint: { seq: number; hash: string } | null;
};

/** An entry as moderators see it. `actor` null: the machine. */
export type FullLogEntry = PublicLogEntry & {
  seq: number;
  time: string | null;
  actor: string | null;
  subject: { kind: string; label: string; href: string | null };
  hash: string;
};
