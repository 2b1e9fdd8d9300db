import type { PrismaClient } from '../../prisma/generated/client';
import type { KnownWorld } from '../casebook/known-world';
import type { CaseSearch } from '../search/case-search';

/** What a command reaches of the world. */
export type CommandIo = {
  /** The database; refuses in one sentence where there is none yet. */
  db: () => PrismaClient;
  /** The search on that database. */
  search: () => CaseSearch;
  out: (text: string) => void;
  err: (text: string) => void;
  now: () => Date;
  newId: () => string;
  /** Asks for something that is not to be seen, such as a password: one line. */
  readSecret: (prompt: string) => Promise<string>;
  /** Whoever runs the machine, as the log names them. */
  actor: string;
  /** The world of the demo's cases, where the program was started with it. */
  demoWorld?: () => Promise<KnownWorld>;
};

/** Something a command refuses, in words for whoever typed it. `usage` is for a command that was typed wrong. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
  constructor(
    message: string,
    readonly kind: 'refused' | 'usage' = 'refused',
  ) {
    super(message);
  }
}

/** Exit codes: done, refused or failed, typed wrong. */
export const EXIT = { ok: 0, refused: 1, usage: 2 } as const;

/** One JSON document and nothing else. */
export function printJson(io: Pick<CommandIo, 'out'>, value: unknown): void {
  io.out(`${JSON.stringify(value, null, 2)}\n`);
}
