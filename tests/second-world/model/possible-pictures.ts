import { vocabulary } from '../../../seed/vocabulary';
import type { DeviceCategory } from '../../../shared/schemas/terms';
import type { CauseRow } from './cause-table';
import { type SyndromeName, syndromes } from './syndromes';

/** Pictures that take a part which some boards don't have. */
const NEEDS_ROLE: Partial<Record<SyndromeName, string>> = {
  noCartridge: 'cartridge-connector',
  fussy: 'cartridge-connector',
  tapeErrors: 'tape-interface',
  tapeSpeed: 'tape-interface',
  tapeChewed: 'tape-interface',
  diskErrors: 'disk-controller',
  noDisc: 'laser-pickup',
  discSkips: 'laser-pickup',
};

const categoriesOf = new Map(vocabulary.symptoms.map((symptom) => [symptom.slug, symptom.categories]));

/** What of a board decides which pictures it can show. */
export type Shower = { category: DeviceCategory; parts: readonly { role: string }[] };

/** The cause's pictures that can occur: not those that the board has no part for, or whose symptoms its category can't show. */
export function possiblePictures(row: CauseRow, board: Shower): CauseRow['pictures'] {
  return row.pictures.filter(([name]) => {
    const need = NEEDS_ROLE[name];
    if (need && !board.parts.some((part) => part.role === need)) return false;
    return (
      name === 'nothing' || Object.keys(syndromes[name].symptoms).some((slug) => categoriesOf.get(slug)?.includes(board.category))
    );
  });
}
