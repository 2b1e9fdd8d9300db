import Link from 'next/link';
import type { PartPlaces } from '../../../../shared/schemas/part-view';

/** On which boards it sits, and which of them can lend each other a known-good one. */
export function PartPlacesTable({ places }: { places: PartPlaces[] }) {
  if (places.length === 0) return null;
  return (
    <section className="section">
      <h2>Where it sits, and where a known-good one can come from</h2>
      <p className="section-sub">
        Boards on one line carry the very same part: one can lend it to another. A part without a standard number is only sure to
        fit its own board.
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Boards</th>
          </tr>
        </thead>
        <tbody>
          {places.map((place) => (
            <tr key={`${place.partNumber} ${place.package} ${place.pins} ${place.boards[0]?.id}`}>
              <th scope="row">
                <span className="figure">{place.partNumber ?? 'no standard number'}</span>{' '}
                <span className="soft small">
                  {place.package}, {place.pins} pins
                </span>
              </th>
              <td>
                <ul className="place-list">
                  {place.boards.map((board) => (
                    <li key={board.id}>
                      <Link href={`/devices/${board.id}`} prefetch={false}>
                        {board.label}
                      </Link>{' '}
                      <span className="figure soft">{board.designators.join(' ')}</span>
                    </li>
                  ))}
                </ul>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
