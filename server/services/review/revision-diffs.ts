import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { contentDiff, type DiffSection } from '../../../shared/domain/review/content-diff';
import type { CaseRevision } from '../../repositories/case-revisions';

/** What changed from one kept version of a case to the next. */
export type RevisionDiff = { number: number; writer: CaseRevision['writer']; month: string; sections: DiffSection[] };

/** What each kept version changed in the one before it, the newest first. */
export function revisionDiffs({ words }: CasebookModel, revisions: readonly CaseRevision[]): RevisionDiff[] {
  return revisions
    .slice(1)
    .map(({ number, writer, month, content }, i) => {
      const before = (revisions[i] as CaseRevision).content;
      return { number, writer, month, sections: contentDiff(words, before, content) };
    })
    .reverse();
}
