import { findPersonalDetails } from '../../../shared/domain/anonymise/find-personal-details';
import { DETAIL_LABELS, type KnownWords } from '../../../shared/domain/anonymise/personal-detail';
import { replaceDetails } from '../../../shared/domain/anonymise/replace-details';
import { NARRATIVE_MAX_LENGTH } from '../../../shared/schemas/case';
import type { ReadRow } from './case-row';

/** A field's finding: what it is, and what may stand there. */
export type FoundDetail = { line: number; field: string; reason: string };

/** A row checked for personal details: as it was, refused with what to remove, or with the details replaced. */
export type CheckedRow = { row: ReadRow; replaced: FoundDetail[] };

/**
 * Looks for personal details in every free-text field of a row: the narrative and the names of pins. With `replace`,
 * those in the narrative give way to what may stand there; a pin's name is never rewritten, since readings are compared by it.
 */
export function checkPersonalDetails(row: ReadRow, known: KnownWords, replace: boolean): CheckedRow {
  if (!('case' in row)) return { row, replaced: [] };
  const { line } = row;
  const { narrative, readings } = row.case.content;
  const details = findPersonalDetails(narrative, known);
  const inNarrative = details.map(({ kind, text, suggestion }) => ({
    line,
    field: 'narrative',
    reason: `${replace ? 'Replaced' : 'Remove'} the ${DETAIL_LABELS[kind]} "${text}"${replace ? ` by "${suggestion}"` : `, or write "${suggestion}"`}.`,
  }));
  const inPins = readings.flatMap(({ pin }, i) =>
    findPersonalDetails(pin, known)
      .filter(({ certainty }) => certainty === 'direct')
      .map(({ kind, text }) => ({ field: `readings.${i}.pin`, reason: `Remove the ${DETAIL_LABELS[kind]} "${text}".` })),
  );
  const shortened = replaceDetails(narrative, details);
  const tooLong = replace && shortened.length > NARRATIVE_MAX_LENGTH;
  const problems = [
    ...(replace ? [] : inNarrative.map(({ field, reason }) => ({ field, reason }))),
    ...(tooLong ? [{ field: 'narrative', reason: `With its details replaced the text is longer than ${NARRATIVE_MAX_LENGTH} signs.` }] : []),
    ...inPins,
  ];
  if (problems.length > 0) return { row: { line, problems }, replaced: [] };
  if (details.length === 0) return { row, replaced: [] };
  const content = { ...row.case.content, narrative: shortened };
  return { row: { line, case: { ...row.case, content } }, replaced: inNarrative };
}
