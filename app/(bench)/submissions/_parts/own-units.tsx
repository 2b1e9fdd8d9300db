import type { WorkingUnitRecord, WorkingUnitStatus } from '../../../../shared/schemas/case';
import { formatCounted, formatMonth } from '../../../_components/format-figures';
import { withdrawUnit } from './withdraw-unit';

const WORDS: Record<WorkingUnitStatus, string> = {
  submitted: 'waits for review',
  accepted: 'published; it counts towards what is usual',
  declined: 'declined; it is not published',
  withdrawn: 'withdrawn; sending the same again takes it up',
};

/** Readings of working units that the account has contributed. */
export function OwnUnits({ units }: { units: (WorkingUnitRecord & { status: WorkingUnitStatus })[] }) {
  if (units.length === 0) return null;
  return (
    <section className="section" aria-labelledby="units-head">
      <h2 id="units-head">Readings of working units</h2>
      <ul className="submission-list">
        {units.map((unit) => (
          <li key={unit.id} className="submission">
            <p>
              <strong>{unit.device}</strong>, {formatMonth(unit.month)}, {formatCounted(unit.readings.length, 'reading')}: {WORDS[unit.status]}
            </p>
            {unit.status === 'submitted' ? (
              <form action={withdrawUnit}>
                <input type="hidden" name="id" value={unit.id} />
                <button type="submit" className="press press-small">
                  Withdraw<span className="sr-only"> the readings of {unit.device}</span>
                </button>
              </form>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
