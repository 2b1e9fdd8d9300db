import type { BoardReadings, UsualPartView } from '../../../../shared/schemas/device-view';
import { formatCount, formatCounted, formatReading } from '../../../_components/format-figures';

type Pin = UsualPartView['pins'][number];

/** What working units show, part by part; each part's pins are folded away until they are wanted. */
export function UsualReadings({ readings }: { readings?: BoardReadings }) {
  if (!readings || readings.parts.length === 0) {
    return <p>No working unit of this board has been read yet, so nobody can say what is usual here.</p>;
  }
  return (
    <>
      <p className="section-sub">
        From {formatCounted(readings.units, 'working unit')}. Counts are units that showed the state; a range holds 95% of working
        units, as surely as 95%, where there are three readings or more.
      </p>
      {readings.parts.map((part) => (
        <details key={part.designator} className="usual">
          <summary>
            <span className="figure">{part.designator}</span>{' '}
            <span className="soft">
              {formatCounted(part.pins.length, 'pin')}, {formatCounted(part.units, 'unit')}
            </span>
          </summary>
          <table className="plain-table usual-table">
            <caption className="sr-only">Usual readings at {part.designator}</caption>
            <thead>
              <tr>
                <th scope="col">Pin</th>
                <th scope="col">States</th>
                <th scope="col">Volts and the like</th>
              </tr>
            </thead>
            <tbody>
              {part.pins.map((pin) => (
                <tr key={pin.pin}>
                  <th scope="row" className="figure">
                    {pin.pin}
                    {pin.name ? <span className="soft"> {pin.name}</span> : null}
                  </th>
                  <td>{stateWords(pin)}</td>
                  <td className="figure">{numberWords(pin)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
    </>
  );
}

/** `pulsing 23, high 1`; the commonest first. */
function stateWords({ states }: Pin): string {
  const seen = states.filter(({ count }) => count > 0).sort((a, b) => b.count - a.count);
  return seen.map(({ state, count }) => `${state} ${formatCount(count)}`).join(', ') || '–';
}

function numberWords({ numbers }: Pin): string {
  const told = numbers.map(({ unit, readings, usual }) =>
    usual
      ? `${formatReading(usual.centre)} (${formatReading(usual.low)} to ${formatReading(usual.high)}) ${unit}, n ${formatCount(readings)}`
      : `${formatCounted(readings, 'reading')} in ${unit}`,
  );
  return told.join('; ') || '–';
}
