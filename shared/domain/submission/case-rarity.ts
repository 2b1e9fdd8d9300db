import { type CaseDetails, rarityOf } from '../anonymise/rarity';
import type { CasebookModel } from '../casebook/casebook-model';

/** What outsiders may know of a case before they read it. */
export type KnownOfCase = { device: string; month: string };

/** Whether device and month single a case out, and what would hide it: leaving out the board, or the month for its year. */
export type CaseRarity = { isUnique: boolean; hidesWithoutBoard: boolean; hidesWithoutMonth: boolean };

/** One other case is enough to be mistaken for it. */
const GROUP = 2;

/** Whether no published case is of this very board (or model, where no board is named) and month. */
export function caseRarity(model: CasebookModel, known: KnownOfCase): CaseRarity {
  const details = detailsOf(model, known);
  const counts = [...model.entries.values()].map((entry) => ({ details: detailsOf(model, entry), count: 1 }));
  const { rare, hidesWithout } = rarityOf(details, counts, GROUP);
  return {
    isUnique: rare,
    hidesWithoutBoard: details.board !== '' && hidesWithout.includes('board'),
    hidesWithoutMonth: hidesWithout.includes('month'),
  };
}

function detailsOf(model: CasebookModel, { device, month }: KnownOfCase) {
  const place = model.words.devices.get(device);
  const [year = ''] = month.split('-');
  return { model: place?.model.slug ?? device, board: place?.board?.slug ?? '', year, month } satisfies CaseDetails;
}
