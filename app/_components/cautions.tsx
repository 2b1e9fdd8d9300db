import type { Hazard } from '../../shared/schemas/terms';
import { CautionIcon } from './icons';
import { HAZARD_WORDS, joinWords } from './words';

/** Cautions in full, to stand before the step that they concern. Nothing where there are none. */
export function Cautions({ hazards }: { hazards: readonly Hazard[] }) {
  if (hazards.length === 0) return null;
  return (
    <ul className="cautions">
      {hazards.map((hazard) => (
        <li className="caution" key={hazard}>
          <CautionIcon size={22} />
          <p>
            <strong>Caution, {HAZARD_WORDS[hazard].name}.</strong> {HAZARD_WORDS[hazard].advice}
          </p>
        </li>
      ))}
    </ul>
  );
}

/** Names of the hazards on one line, for a folded step. */
export function CautionLine({ hazards }: { hazards: readonly Hazard[] }) {
  if (hazards.length === 0) return null;
  return (
    <span className="caution-line">
      <CautionIcon size={16} /> Caution: {joinWords(hazards.map((hazard) => HAZARD_WORDS[hazard].name))}
    </span>
  );
}
