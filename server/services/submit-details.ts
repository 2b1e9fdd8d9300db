import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { findPersonalDetails, prepareRules } from '../../shared/domain/anonymise/find-personal-details';
import { knownWordsOf } from '../../shared/domain/anonymise/known-words';
import type { KnownWords, PersonalDetail } from '../../shared/domain/anonymise/personal-detail';
import { replaceDetails } from '../../shared/domain/anonymise/replace-details';
import { draftTexts, mapTexts, openDetails } from '../../shared/domain/submission/draft-texts';
import type { DraftDocument, FoundDetail } from '../../shared/schemas/submission';
import { inSlices } from '../event-loop/take-turns';

const words = new WeakMap<CasebookModel, KnownWords>();

function knownTo(model: CasebookModel): KnownWords {
  const known = words.get(model) ?? knownWordsOf(model.coding.vocabulary, model.coding.catalogue);
  words.set(model, known);
  return known;
}

/** Of this module alone: where the bundler loads it several times, each has patterns of its own. */
let isPrepared = false;

/** Has the rules made ready behind the first answers, so that the first text that is posted waits for nothing. */
export function startDetails(): void {
  if (isPrepared) return;
  isPrepared = true;
  void inSlices(prepareRules());
}

/** Everything in one text that can give a person away. */
export function personalDetailsIn(model: CasebookModel, text: string): PersonalDetail[] {
  return findPersonalDetails(text, knownTo(model));
}

/** Everything in the form's free texts that can give a person away, kept or not, in the order of the fields. */
export function detailsIn(model: CasebookModel, draft: DraftDocument): FoundDetail[] {
  return draftTexts(draft).flatMap(({ field, text }) =>
    personalDetailsIn(model, text).map((detail) => ({ field, ...detail })),
  );
}

/** The form as it may be stored: each detail that the contributor did not keep gives way to what stands for it. */
export function withoutDetails(draft: DraftDocument, found: readonly FoundDetail[]): DraftDocument {
  const open = openDetails(draft, found);
  return mapTexts(draft, (field, text) =>
    replaceDetails(
      text,
      open.filter((detail) => detail.field === field),
    ),
  );
}
