import { z } from 'zod';
import { causeSchema, checkSchema, fixSchema, symptomSchema } from './vocabulary';
import { slugSchema } from './terms';

/** Kinds of entry that moderators look after. Roles belong to the catalogue's parts and stay as they are. */
export const WORD_KINDS = ['symptom', 'check', 'cause', 'fix'] as const;
export const wordKindSchema = z.enum(WORD_KINDS);
export type WordKind = z.infer<typeof wordKindSchema>;

const label = z.string().trim().min(2, 'Write at least 2 characters.').max(80, 'Keep the label under 81 characters.');
const meaning = z
  .string()
  .trim()
  .min(10, 'Say in one sentence what it means.')
  .max(300, 'Keep the meaning under 301 characters.');
const synonym = z.string().trim().min(1).max(60, 'Keep a synonym under 61 characters.');
const synonymList = z.array(synonym).max(60, 'At most 60 synonyms.');
const ofWord = { kind: wordKindSchema, slug: slugSchema };

const entrySchemas = { symptom: symptomSchema, check: checkSchema, cause: causeSchema, fix: fixSchema };
const addOf = <K extends WordKind>(kind: K) =>
  z.object({ act: z.literal('add'), kind: z.literal(kind), entry: entrySchemas[kind] });

/** One change of the vocabulary, as it is kept: what was changed, and nothing of who did it. */
export const wordEditSchema = z.union([
  addOf('symptom'),
  addOf('check'),
  addOf('cause'),
  addOf('fix'),
  z.object({ act: z.literal('reword'), ...ofWord, label, meaning }),
  z.object({ act: z.literal('synonyms'), ...ofWord, add: synonymList, remove: synonymList }),
  z.object({ act: z.literal('merge'), kind: wordKindSchema, from: slugSchema, into: slugSchema }),
  z.object({ act: z.literal('retire'), ...ofWord }),
]);
export type WordEdit = z.infer<typeof wordEditSchema>;

/** What a moderator can ask for. A new entry takes from a similar one what is not said. */
export const wordChangeSchema = z.discriminatedUnion('act', [
  z.object({ act: z.literal('add'), kind: wordKindSchema, like: slugSchema, label, meaning, synonyms: synonymList.default([]) }),
  z.object({ act: z.literal('reword'), ...ofWord, label, meaning }),
  z.object({ act: z.literal('synonyms'), ...ofWord, add: synonymList.default([]), remove: synonymList.default([]) }),
  z.object({ act: z.literal('merge'), kind: wordKindSchema, from: slugSchema, into: slugSchema }),
  z.object({ act: z.literal('retire'), ...ofWord }),
]);
export type WordChange = z.infer<typeof wordChangeSchema>;
