import { type ContentProblem, checkContent } from '../../../shared/domain/casebook/check-content';
import type { VocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { renameContent } from '../../../shared/domain/words/rename-content';
import { type CaseContent, caseContentSchema, caseIdSchema } from '../../../shared/schemas/case';

/** One row of a file: a case, or what is wrong with it. `line` is where the row begins, from 1. */
export type ReadRow =
  | { line: number; case: { id: string | null; content: CaseContent } }
  | { line: number; problems: ContentProblem[] };

const CONTENT_FIELDS = new Set(Object.keys(caseContentSchema.shape));
const RECORD_FIELDS = new Set(['id', 'status', 'content']);

/**
 * Checks one row: a record `{ id, status, content }`, or the content itself with an optional `id` beside it. The
 * status is not taken over: what comes in is decided by how it comes in.
 */
export function readCaseRow(words: VocabularyWords, line: number, row: unknown): ReadRow {
  if (row === null || typeof row !== 'object' || Array.isArray(row)) {
    return { line, problems: [{ field: '', reason: 'A row has to be one case.' }] };
  }
  const isRecord = 'content' in row;
  const { id = null, status: _status, ...flat } = row as Record<string, unknown>;
  const content = isRecord ? (row as { content: unknown }).content : flat;
  const problems = [
    ...unknownFields(isRecord ? row : {}, RECORD_FIELDS),
    ...unknownFields(content, CONTENT_FIELDS),
    ...(id === null || caseIdSchema.safeParse(id).success
      ? []
      : [{ field: 'id', reason: 'A case id is 16 letters and digits 2 to 7.' }]),
  ];
  const parsed = caseContentSchema.safeParse(content);
  if (!parsed.success) {
    problems.push(...parsed.error.issues.map((issue) => ({ field: issue.path.join('.'), reason: issue.message })));
    return { line, problems };
  }
  const current = renameContent(words.aliases, parsed.data);
  problems.push(...checkContent(words, current));
  return problems.length > 0 ? { line, problems } : { line, case: { id: id as string | null, content: current } };
}

function unknownFields(value: unknown, known: ReadonlySet<string>): ContentProblem[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.keys(value)
    .filter((field) => !known.has(field))
    .map((field) => ({ field, reason: 'There is no such field.' }));
}
