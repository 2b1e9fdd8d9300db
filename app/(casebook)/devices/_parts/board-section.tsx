import Link from 'next/link';
import type { DeviceView } from '../../../../shared/schemas/device-view';
import { formatCounted } from '../../../_components/format-figures';
import { capital } from '../../../_components/words';

type BoardSectionProps = { board: DeviceView['boards'][number]; roles: Map<string, string> };

/** One board revision: its cases, its parts, and the way to what is usual at their pins. */
export function BoardSection({ board, roles }: BoardSectionProps) {
  return (
    <section className="section" id={board.slug} aria-labelledby={`${board.slug}-head`}>
      <h2 id={`${board.slug}-head`}>{board.label}</h2>
      <p className="section-sub">{board.summary}</p>
      <p className="onward no-print">
        <Link href={`/?on=${board.slug}`} prefetch={false} className="press">
          Look up on this board
        </Link>
        <Link href={`/cases?on=${board.slug}`} prefetch={false}>
          {board.cases === 0 ? 'No case yet' : `Its ${formatCounted(board.cases, 'case')}`}
        </Link>
        <Link href={`/devices/${board.slug}/readings`} prefetch={false}>
          {board.workingUnits === 0 ? 'No usual readings yet' : `Usual readings, from ${formatCounted(board.workingUnits, 'working unit')}`}
        </Link>
      </p>
      <h3>Parts</h3>
      <table className="plain-table">
        <caption className="sr-only">Parts of {board.label}</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Role</th>
            <th scope="col">Standard number</th>
            <th scope="col">Package</th>
          </tr>
        </thead>
        <tbody>
          {board.parts.map((part) => (
            <tr key={part.designator}>
              <th scope="row" className="figure">
                {part.designator}
              </th>
              <td>
                <Link href={`/parts/${part.role}`} prefetch={false}>
                  {capital(roles.get(part.role) ?? part.role)}
                </Link>
              </td>
              <td className="figure">{part.partNumber ?? '–'}</td>
              <td>
                {part.package}, {part.pins} pins
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
