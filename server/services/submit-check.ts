import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { renameDraft } from '../../shared/domain/words/rename-draft';
import { checkSubmission } from '../../shared/domain/submission/check-submission';
import { openDetails } from '../../shared/domain/submission/draft-texts';
import type { CaseContent } from '../../shared/schemas/case';
import type { DraftDocument, FieldProblem, FoundDetail } from '../../shared/schemas/submission';
import type { StoredMark, StoredProposal } from '../repositories/submission-contents';
import { monthOf } from './review/move-case';
import { detailsIn } from './submit-details';

/** What a form means, and what goes to review beside it. */
type Checked = { content: CaseContent; proposals: StoredProposal[]; marks: StoredMark[] };
type Refused = { kind: 'problems'; problems: FieldProblem[] } | { kind: 'details'; details: FoundDetail[] };

/** Reads a form into a case; refuses one with faults, or with personal details that nobody has decided about. */
export function checkDocument(
  model: CasebookModel,
  { document, now }: { document: DraftDocument; now: Date },
): Checked | Refused {
  const draft = {
    ...renameDraft(model.words.aliases, document),
    narrative: document.narrative.trim(),
    proposals: document.proposals.map((p) => ({ ...p, word: p.word.trim(), meaning: p.meaning.trim() })),
    photos: document.photos.map((p) => ({ ...p, alt: p.alt.trim() })),
  };
  const { content, problems } = checkSubmission(model.words, draft, monthOf(now));
  if (content === null) return { kind: 'problems', problems };
  // The other texts of the form do not become part of the case: they were read into its closed terms.
  const found = detailsIn(model, draft).filter(({ field }) => /^(narrative$|proposals\.|photos\.|readings\.\d+\.pin$)/.test(field));
  const open = openDetails(draft, found);
  if (open.length > 0) return { kind: 'details', details: open };
  return {
    content,
    proposals: draft.proposals.map(({ kind, word, meaning }) => ({ kind, word, meaning })),
    marks: found.map(({ field, kind, certainty, start, end }) => ({ field, kind, certainty, start, end })),
  };
}
