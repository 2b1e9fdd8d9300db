import type { PrismaClient } from '../../../prisma/generated/client';
import type { CaseSearch } from '../../../server/search/case-search';
import type { Actor } from '../../../shared/domain/can/can';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { Random } from '../../../shared/stats/random';

/** What everything that the worker does at the same time shares. */
export type Lane = {
  db: PrismaClient;
  photoFolder: string;
  search: CaseSearch;
  seed: number;
  now: Date;
  poster: Actor;
  moderator: Actor;
  random: Random;
  newId: () => string;
  pick: <T>(list: readonly T[]) => T;
  /** The casebook as the server would have it at this moment. */
  model: () => Promise<CasebookModel>;
  /** Says that something is about to happen to what goes by this key. */
  about: (key: string, op: string) => void;
  /** Says how what goes by this key stands now that it is done. */
  done: (key: string, status: string, content?: string) => void;
  /** Says how a case stands. */
  report: (id: string) => Promise<void>;
  /** Has the casebook in memory and the index follow. */
  tell: () => Promise<void>;
};

export const photoKey = (id: string) => `photo:${id}`;
export const synonymKey = (text: string) => `synonym:${text}`;
