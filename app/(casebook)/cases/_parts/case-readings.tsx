import type { Reading } from '../../../../shared/schemas/case';

/** Readings pin by pin; nothing where none were taken. */
export function CaseReadings({ readings }: { readings: Reading[] }) {
  if (readings.length === 0) return null;
  return (
    <section className="section">
      <h2>Readings</h2>
      <table className="plain-table readings">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Pin</th>
            <th scope="col">Reading</th>
          </tr>
        </thead>
        <tbody>
          {readings.map((reading, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same pin can be read twice, and the order never changes
            <tr key={index}>
              <th scope="row" className="figure">
                {reading.designator}
              </th>
              <td className="figure">{reading.pin}</td>
              <td className="figure">{reading.value === null ? reading.state : `${reading.value} ${reading.unit}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
