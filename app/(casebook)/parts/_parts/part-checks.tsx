import type { PartView } from '../../../../shared/schemas/part-view';
import { Cautions } from '../../../_components/cautions';
import { formatMinutes } from '../../../_components/format-figures';
import { StageMark } from '../../../_components/stage-mark';

/** How to tell whether it is this part: every check of it, the least invasive first, cautions before the doing. */
export function PartChecks({ checks }: { checks: PartView['checks'] }) {
  if (checks.length === 0) return null;
  return (
    <section className="section">
      <h2>How to check it</h2>
      <ul className="rows">
        {checks.map((check) => (
          <li className="row" key={check.id} id={check.id}>
            <details>
              <summary className="check-summary">
                <StageMark stage={check.stage} />
                <span>
                  <strong>{check.label}</strong> <span className="soft">{formatMinutes(check.minutes)}</span>
                </span>
              </summary>
              <Cautions hazards={check.cautions} />
              <p>{check.howTo}</p>
              <p className="soft">A working unit shows: {check.working}.</p>
            </details>
          </li>
        ))}
      </ul>
    </section>
  );
}
