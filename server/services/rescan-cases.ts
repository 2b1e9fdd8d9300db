import { findPersonalDetails } from '../../shared/domain/anonymise/find-personal-details';
import type { KnownWords } from '../../shared/domain/anonymise/personal-detail';
import type { CaseStatus } from '../../shared/schemas/case';
import type { PrismaClient } from '../../prisma/generated/client';
import { streamCases } from '../repositories/case-repository';
import { listPhotosOfCase } from '../repositories/photo-repository';
import { listMarks, listProposals, replaceMarks, type StoredMark } from '../repositories/submission-contents';

export type RescanInput = { known: KnownWords; onProgress?: (done: number) => void };

/** What a look through the stored cases came to. `added` are the marks that were not there before. */
export type Rescan = {
  cases: number;
  marks: number;
  added: number;
  marked: { id: string; status: CaseStatus; marks: number }[];
};

/**
 * Runs the rules for personal details over the texts of every stored case: narrative, names of pins, proposed words,
 * words of photos. What they find is marked for the moderators; marks that are there already stay as they are, so that
 * a second run adds nothing. The texts themselves are never changed.
 */
export async function rescanCases(db: PrismaClient, { known, onProgress }: RescanInput): Promise<Rescan> {
  const result: Rescan = { cases: 0, marks: 0, added: 0, marked: [] };
  for await (const { id, status, content } of streamCases(db)) {
    const texts = await textsOf(db, id, content);
    const found = texts.flatMap(({ field, text, surely }) =>
      findPersonalDetails(text, known)
        .filter(({ certainty }) => !surely || certainty === 'direct')
        .map(({ kind, certainty, start, end }): StoredMark => ({ field, kind, certainty, start, end })),
    );
    const before = await listMarks(db, id);
    const fresh = found.filter((mark) => !before.some((other) => isSame(mark, other)));
    if (fresh.length > 0) await db.$transaction((tx) => replaceMarks(tx, id, [...before, ...fresh]));
    const marks = before.length + fresh.length;
    result.cases += 1;
    result.marks += marks;
    result.added += fresh.length;
    if (marks > 0) result.marked.push({ id, status, marks });
    onProgress?.(result.cases);
  }
  return result;
}

type Text = {
  field: string;
  text: string;
  /** Whether only what is certain counts: names of pins look like much else. */
  surely: boolean;
};

async function textsOf(db: PrismaClient, id: string, content: { narrative: string; readings: readonly { pin: string }[] }): Promise<Text[]> {
  const proposals = await listProposals(db, id);
  const photos = await listPhotosOfCase(db, id);
  return [
    { field: 'narrative', text: content.narrative, surely: false },
    ...content.readings.map(({ pin }, i) => ({ field: `readings.${i}.pin`, text: pin, surely: true })),
    ...proposals.flatMap(({ word, meaning }, i) => [
      { field: `proposals.${i}.word`, text: word, surely: false },
      { field: `proposals.${i}.meaning`, text: meaning, surely: false },
    ]),
    ...photos.map(({ alt }, i) => ({ field: `photos.${i}.alt`, text: alt, surely: false })),
  ];
}

function isSame(a: StoredMark, b: StoredMark): boolean {
  return a.field === b.field && a.kind === b.kind && a.start === b.start && a.end === b.end;
}
