'use client';

import type { NextCheck } from '../../../shared/schemas/look-up';
import { AddressLink } from '../../_components/address-link';
import { formatPercent } from '../../_components/format-figures';
import { PairedBars } from '../../_components/paired-bars';

type OutcomeProps = {
  /** Address of the question with this outcome. */
  href: string;
  /** The outcome, as it stands inside a sentence. */
  found: string;
  probability: number;
  /** The causes shown, now and after this outcome. */
  effects: NextCheck['outcomes'][number]['effect'];
  /** The share that the full width of the bars stands for. */
  full: number;
};

/**
 * What one outcome of a check would do to the leading causes, with the press that says it was found. Drawn from its figures in the
 * browser, too: they are a fraction of what is drawn of them.
 */
export function Outcome({ href, found, probability, effects, full }: OutcomeProps) {
  return (
    <li className="outcome">
      <div className="outcome-head">
        <AddressLink href={href} className="press" scroll>
          <span>
            <span className="press-lead">I found: </span>
            {found}
          </span>
        </AddressLink>
        <span className="figure">{formatPercent(probability)}</span>
      </div>
      <table className="effects">
        <caption className="sr-only">Leading causes before and after: {found}</caption>
        <tbody>
          {effects.map((effect) => (
            <tr key={effect.id}>
              <th scope="row">{effect.label}</th>
              <td className="drawn">
                <PairedBars before={effect.before} after={effect.after} full={full} />
              </td>
              <td className="figure">
                {formatPercent(effect.before)} → {formatPercent(effect.after)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </li>
  );
}
