import type { CaseContent } from '../../schemas/case';
import type { DraftDocument, FieldProblem } from '../../schemas/submission';
import { checkContent } from '../casebook/check-content';
import type { DevicePlace, VocabularyWords } from '../casebook/vocabulary-words';
import { contentOfDraft, type DraftReading } from './content-of-draft';

/** Nothing this project is about was repaired before. */
const FIRST_MONTH = '1990-01';

/**
 * Everything that the form is held to before it can be submitted: that it can be read, that every word exists, that
 * parts and checks are of this board, and that there is enough in it to be evidence.
 *
 * @param nowMonth the month of now, YYYY-MM: a repair is not posted before it ended.
 */
export function checkSubmission(words: VocabularyWords, draft: DraftDocument, nowMonth: string): DraftReading {
  const read = contentOfDraft(words, draft);
  const enough = checkEnough(draft);
  if (read.content === null) return { content: null, problems: [...read.problems, ...enough] };
  const problems = [
    ...checkContent(words, read.content).map(({ field, reason }) => ({ field, reason })),
    ...checkBoard(words.devices.get(read.content.device), read.content),
    ...checkRepeats(read.content),
    ...checkMonth(read.content.month, nowMonth),
    ...checkProposals(draft),
    ...checkPhotos(draft),
    ...enough,
  ];
  return problems.length === 0 ? read : { content: null, problems };
}

function checkEnough(draft: DraftDocument): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const proposed = new Set(draft.proposals.map(({ kind }) => kind));
  if (!draft.symptoms.some((s) => s.present) && !proposed.has('symptom')) {
    problems.push({ field: 'symptoms', reason: 'Name at least one thing that was wrong with the unit.' });
  }
  if (draft.steps.length === 0 && draft.causes.length === 0 && proposed.size === 0) {
    problems.push({
      field: 'steps',
      reason: 'Add at least one check or fix, or name the cause: a case without any tells nothing.',
    });
  }
  if (draft.proof !== '' && draft.causes.length === 0 && !proposed.has('cause')) {
    problems.push({ field: 'proof', reason: 'Name the cause that was proved, or say that none was.' });
  }
  return problems;
}

function checkBoard(place: DevicePlace | undefined, content: CaseContent): FieldProblem[] {
  if (!place) return [];
  const boards = place.board ? [place.board] : place.model.boards;
  const parts = new Set(boards.flatMap((board) => board.parts.map((part) => part.designator)));
  const problems: FieldProblem[] = [];
  const part = (field: string, designator: string | null) => {
    if (designator !== null && !parts.has(designator)) {
      problems.push({
        field,
        reason: `There is no ${designator} on ${place.label}. Look at the board's parts, or leave it empty.`,
      });
    }
  };
  const check = (field: string, slug: string) => {
    if (boards.every((board) => board.impossibleChecks.includes(slug))) {
      problems.push({
        field,
        reason: `${place.label} has nothing that this check looks at. Choose another check or another board.`,
      });
    }
  };
  content.steps.forEach((step, i) => {
    if (step.kind === 'check') {
      check(`steps.${i}.check`, step.check);
      part(`steps.${i}.designator`, step.designator);
    } else step.fixes.forEach((fix, j) => part(`steps.${i}.fixes.${j}.designator`, fix.designator));
  });
  content.readings.forEach((reading, i) => part(`readings.${i}.designator`, reading.designator));
  content.causes.forEach((cause, i) => {
    for (const designator of cause.designators) part(`causes.${i}.designators`, designator);
  });
  content.afterRepairChecks.forEach((slug, i) => check(`afterRepairChecks.${i}`, slug));
  return problems;
}

function checkRepeats(content: CaseContent): FieldProblem[] {
  const problems: FieldProblem[] = [];
  content.afterRepairChecks.forEach((check, i, all) => {
    if (all.indexOf(check) < i)
      problems.push({ field: `afterRepairChecks.${i}`, reason: 'This check is listed twice. List it once.' });
  });
  content.steps.forEach((step, i) => {
    if (step.kind !== 'fix') return;
    const names = step.fixes.map((fix) => `${fix.fix} ${fix.designator}`);
    names.forEach((name, j) => {
      if (names.indexOf(name) < j)
        problems.push({ field: `steps.${i}.fixes.${j}.fix`, reason: 'This fix is listed twice in one attempt. List it once.' });
    });
  });
  return problems;
}

function checkMonth(month: string, nowMonth: string): FieldProblem[] {
  if (month > nowMonth)
    return [{ field: 'month', reason: 'This month has not come yet. Write the month in which the repair ended.' }];
  if (month < FIRST_MONTH) return [{ field: 'month', reason: `Write a month from ${FIRST_MONTH} on.` }];
  return [];
}

function checkPhotos(draft: DraftDocument): FieldProblem[] {
  return draft.photos.flatMap(({ alt }, i) =>
    alt.trim().length < 3
      ? [{ field: `photos.${i}.alt`, reason: 'Say in a few words what the photo shows, for those who cannot see it.' }]
      : [],
  );
}

function checkProposals(draft: DraftDocument): FieldProblem[] {
  const seen = new Set<string>();
  return draft.proposals.flatMap(({ kind, word, meaning }, i) => {
    const name = `${kind} ${word.trim().toLowerCase()}`;
    const problems: FieldProblem[] = [];
    if (word.trim().length < 3)
      problems.push({ field: `proposals.${i}.word`, reason: 'Write the word, with at least 3 letters.' });
    if (meaning.trim().length < 10) {
      problems.push({ field: `proposals.${i}.meaning`, reason: 'Say in a sentence what it means, so that others use it alike.' });
    }
    if (seen.has(name)) problems.push({ field: `proposals.${i}.word`, reason: 'This word is proposed twice. Propose it once.' });
    seen.add(name);
    return problems;
  });
}
