import type { BenchAnswer, BenchQuestion } from '../../../../shared/domain/bench/answer-bench';
import type { CasebookSnapshot, CasebookWords } from '../../../../shared/domain/snapshot/casebook-snapshot';
import type { Finding } from '../../../../shared/schemas/finding';
import type { PlanOptions, PlanResult } from '../../../../shared/schemas/plan';

/** What the page asks of its worker. A later question of the same kind makes an earlier one void. */
export type ToWorker =
  | { kind: 'words'; words: CasebookWords }
  | { kind: 'snapshot'; snapshot: CasebookSnapshot }
  | { kind: 'ask'; id: number; question: BenchQuestion; options: PlanOptions }
  | { kind: 'read'; id: number; text: string };

/** What a text was read as. */
export type ReadText = { findings: Finding[]; unread: string[] };

/** What the worker answers; `ms` is how long it took to reckon. */
export type FromWorker =
  | { kind: 'answer'; id: number; answer: BenchAnswer; ms: number }
  /** `final` false: a plan to go on with until the search has gone deeper. */
  | { kind: 'plan'; id: number; plan: PlanResult; final: boolean; ms: number }
  | { kind: 'read'; id: number; read: ReadText }
  | { kind: 'trouble'; id: number; told: string };
