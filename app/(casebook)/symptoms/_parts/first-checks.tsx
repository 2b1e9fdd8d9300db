import Link from 'next/link';
import type { SymptomView } from '../../../../shared/schemas/symptom-view';
import { CautionLine } from '../../../_components/cautions';
import { formatBits, formatMinutes } from '../../../_components/format-figures';
import { StageMark } from '../../../_components/stage-mark';

/** What to check first where nothing but the symptom is known, the least invasive that pays first. */
export function FirstChecks({ checks }: { checks: SymptomView['firstChecks'] }) {
  if (checks.length === 0) return null;
  return (
    <section className="section">
      <h2>What to check first</h2>
      <p className="section-sub">In the order in which a look-up with nothing but this symptom suggests them.</p>
      <ol className="rows">
        {checks.map((check) => (
          <li className="row step check-line" key={check.id}>
            <StageMark stage={check.stage} />
            <div>
              <Link href={`/parts/${check.role.id}#${check.id}`} prefetch={false} className="row-link">
                {check.label}
              </Link>
              <p className="soft small">
                {formatMinutes(check.minutes)} · tells {formatBits(check.bits)} <CautionLine hazards={check.cautions} />
              </p>
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
