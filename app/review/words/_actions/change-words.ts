'use server';

import { revalidatePath } from 'next/cache';
import { type WordChange, wordKindSchema } from '../../../../shared/schemas/word-edit';
import type { FormState } from '../../../_trpc/form-state';
import { formStateOf } from '../../../_trpc/form-state-of';
import { serverCaller } from '../../../_trpc/server';

const textOf = (data: FormData, name: string): string => {
  const value = data.get(name);
  return typeof value === 'string' ? value.trim() : '';
};
/** One name a line, or parted by commas. */
const listOf = (data: FormData, name: string): string[] =>
  textOf(data, name)
    .split(/[\n,]/)
    .map((name) => name.trim())
    .filter(Boolean);
const kindOf = (data: FormData) => wordKindSchema.catch('symptom').parse(textOf(data, 'kind'));

async function change(asked: WordChange, data: FormData): Promise<FormState> {
  const typed = Object.fromEntries([...data].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])));
  const state = await formStateOf(() => serverCaller().word.change(asked), typed);
  if (state.done) revalidatePath('/', 'layout');
  return state.done ? { ...state, typed: {} } : state;
}

export async function rewordEntry(_: FormState, data: FormData): Promise<FormState> {
  const [label, meaning] = [textOf(data, 'label'), textOf(data, 'meaning')];
  return change({ act: 'reword', kind: kindOf(data), slug: textOf(data, 'slug'), label, meaning }, data);
}

export async function changeSynonyms(_: FormState, data: FormData): Promise<FormState> {
  const before = listOf(data, 'before');
  const after = listOf(data, 'synonyms');
  const add = after.filter((name) => !before.includes(name));
  const remove = before.filter((name) => !after.includes(name));
  return change({ act: 'synonyms', kind: kindOf(data), slug: textOf(data, 'slug'), add, remove }, data);
}

/** Takes words as another name of an entry: of a proposal, or of what a look-up could not read. */
export async function takeAsSynonym(_: FormState, data: FormData): Promise<FormState> {
  // The list of entries of all kinds names both: symptom/grey-screen.
  const [kind, slug] = textOf(data, 'synonyms').split('/');
  const parsed = wordKindSchema.safeParse(kind);
  if (!parsed.success || slug === undefined)
    return { fields: { synonyms: 'Choose an entry.' }, told: null, typed: {}, done: false };
  return change({ act: 'synonyms', kind: parsed.data, slug, add: [textOf(data, 'word')], remove: [] }, data);
}

export async function mergeEntries(_: FormState, data: FormData): Promise<FormState> {
  return change({ act: 'merge', kind: kindOf(data), from: textOf(data, 'slug'), into: textOf(data, 'into') }, data);
}

export async function retireEntry(_: FormState, data: FormData): Promise<FormState> {
  return change({ act: 'retire', kind: kindOf(data), slug: textOf(data, 'slug') }, data);
}

export async function addEntry(_: FormState, data: FormData): Promise<FormState> {
  const [label, meaning, like] = [textOf(data, 'label'), textOf(data, 'meaning'), textOf(data, 'like')];
  return change({ act: 'add', kind: kindOf(data), like, label, meaning, synonyms: listOf(data, 'synonyms') }, data);
}

export async function undoChange(_: FormState, data: FormData): Promise<FormState> {
  const state = await formStateOf(() => serverCaller().word.undo({ revision: Number(textOf(data, 'revision')) }));
  if (state.done) revalidatePath('/', 'layout');
  return state;
}
