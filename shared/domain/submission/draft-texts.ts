import type { DraftDocument, FoundDetail } from '../../schemas/submission';

/** Every text of the form that was typed freely, by its field. */
export function draftTexts(draft: DraftDocument): { field: string; text: string }[] {
  const texts: { field: string; text: string }[] = [];
  mapTexts(draft, (field, text) => {
    texts.push({ field, text });
    return text;
  });
  return texts;
}

/** The form with each freely typed text replaced by what `change` makes of it. */
export function mapTexts(draft: DraftDocument, change: (field: string, text: string) => string): DraftDocument {
  return {
    ...draft,
    ownWords: change('ownWords', draft.ownWords),
    narrative: change('narrative', draft.narrative),
    soakMinutes: change('soakMinutes', draft.soakMinutes),
    steps: draft.steps.map((step, i) =>
      step.kind === 'check'
        ? {
            ...step,
            designator: change(`steps.${i}.designator`, step.designator),
            reading: change(`steps.${i}.reading`, step.reading),
          }
        : {
            ...step,
            fixes: step.fixes.map((fix, j) => ({
              ...fix,
              designator: change(`steps.${i}.fixes.${j}.designator`, fix.designator),
            })),
          },
    ),
    readings: draft.readings.map((row, i) => ({
      ...row,
      designator: change(`readings.${i}.designator`, row.designator),
      pin: change(`readings.${i}.pin`, row.pin),
      reading: change(`readings.${i}.reading`, row.reading),
    })),
    causes: draft.causes.map((cause, i) => ({ ...cause, designators: change(`causes.${i}.designators`, cause.designators) })),
    photos: draft.photos.map((photo, i) => ({ ...photo, alt: change(`photos.${i}.alt`, photo.alt) })),
    proposals: draft.proposals.map((proposal, i) => ({
      ...proposal,
      word: change(`proposals.${i}.word`, proposal.word),
      meaning: change(`proposals.${i}.meaning`, proposal.meaning),
    })),
  };
}

/** Details among the found that the contributor did not say to keep. */
export function openDetails(draft: DraftDocument, found: readonly FoundDetail[]): FoundDetail[] {
  const kept = new Set(draft.kept);
  return found.filter((detail) => !kept.has(detail.text));
}
