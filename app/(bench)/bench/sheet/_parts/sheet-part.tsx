import { judgePart } from '../../../../../shared/domain/readings/judge-part';
import { logicFamilyOf } from '../../../../../shared/domain/readings/logic-family';
import { packageLayout } from '../../../../../shared/domain/readings/package-layout';
import type { Reading } from '../../../../../shared/schemas/case';
import type { BoardPart } from '../../../../../shared/schemas/device';
import { readingWords } from '../../_parts/entry-words';
import type { DeviceData } from '../../_parts/use-words';
import { usualWords } from '../../_parts/usual-words';
import { VERDICT_WORDS } from '../../_parts/verdict-mark';

type SheetPartProps = { part: BoardPart; role: string; data: DeviceData | null; readings: readonly Reading[] };

/** A part's pins for paper: two columns as they lie, a box to write in (or what was read), and what is usual. */
export function SheetPart({ part, role, data, readings }: SheetPartProps) {
  const layout = packageLayout(part);
  const known = {
    working: data?.working.find((p) => p.designator === part.designator) ?? null,
    faulty: data?.faulty.find((p) => p.designator === part.designator) ?? null,
  };
  const own = readings.filter((r) => r.designator === part.designator);
  const verdicts = new Map(judgePart(part, known, own).pins.map((pin) => [pin.pin, pin]));
  const sides = layout.body === 'dual' || layout.body === 'double-row';
  const family = logicFamilyOf(part.partNumber);
  return (
    <section className="sheet-part" aria-labelledby={`sheet-${part.designator}`}>
      <h2 id={`sheet-${part.designator}`}>
        {part.designator} {role}
        {part.partNumber ? `, ${part.partNumber}` : ''} ({part.package} {part.pins})
      </h2>
      {family ? (
        <p className="small">
          {family.name}: low up to {family.inputLow} V, high from {family.inputHigh} V, supply {family.supply.low} to {family.supply.high} V.{' '}
          {family.source}
        </p>
      ) : null}
      <div className="sheet-pins" style={{ gridTemplateColumns: sides ? '1fr 1fr' : '1fr' }}>
        {layout.pins.map(({ pin, row, column }) => {
          const reading = own.find((r) => r.pin === String(pin));
          const judged = verdicts.get(String(pin));
          const usual = usualWords(part, known, String(pin)).replace('Working units: ', '').replace('No working unit was read here.', '');
          return (
            <div className="sheet-pin" key={pin} style={sides ? { gridRow: row + 1, gridColumn: column + 1 } : undefined}>
              <span className="figure">{pin}</span>
              <span>{part.pinNames[pin - 1] ?? ''}</span>
              <span className="sheet-blank">{reading ? readingWords(reading) : ''}</span>
              <span className="soft">
                {judged ? `${VERDICT_WORDS[judged.verdict]}; ` : ''}
                {usual}
              </span>
            </div>
          );
        })}
      </div>
    </section>
  );
}
