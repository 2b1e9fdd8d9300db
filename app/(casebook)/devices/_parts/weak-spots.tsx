import Link from 'next/link';
import type { DeviceView } from '../../../../shared/schemas/device-view';
import { formatCount, formatCounted, formatPercent, formatPercentRange } from '../../../_components/format-figures';
import { capital } from '../../../_components/words';
import type { CountedShare } from '../../../../shared/schemas/counted-share';

const CATEGORY_WORDS: Record<DeviceView['category'], string> = {
  'home-computer': 'home computers',
  console: 'consoles',
  handheld: 'handhelds',
  'arcade-board': 'arcade boards',
  monitor: 'monitors',
  drive: 'drives',
};

/** Parts that fail more often here than on the other devices of the category. */
export function WeakSpots({ view }: { view: DeviceView }) {
  const others = `other ${CATEGORY_WORDS[view.category]}`;
  return (
    <section className="section">
      <h2>Weak spots</h2>
      {view.categoryCases === 0 ? <p>There are no cases of {others} to hold it against.</p> : null}
      {view.categoryCases > 0 && view.weakSpots.length === 0 ? (
        <p>
          No part is at fault clearly more often than on {others} ({formatCounted(view.categoryCases, 'case')}).
        </p>
      ) : null}
      {view.weakSpots.length > 0 ? (
        <>
          <p className="section-sub">
            Parts at fault more often than on {others} that have such a part: the two 90% intervals do not overlap. Among so many parts, one device in
            three shows such a part by chance.
          </p>
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">Here</th>
                <th scope="col">{capital(others)}</th>
              </tr>
            </thead>
            <tbody>
              {view.weakSpots.map((spot) => (
                <tr key={spot.id}>
                  <th scope="row">
                    <Link href={`/parts/${spot.id}`} prefetch={false}>
                      {capital(spot.label)}
                    </Link>
                  </th>
                  <td>{shareWords(spot.here)}</td>
                  <td>{shareWords(spot.elsewhere)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      ) : null}
    </section>
  );
}

/** `12% (9–16%), 41 of 340`. */
export function shareWords({ count, of, low, high }: CountedShare): string {
  if (of === 0) return 'no case';
  return `${formatPercent(count / of)} (${formatPercentRange(low, high)}), ${formatCount(count)} of ${formatCount(of)}`;
}
