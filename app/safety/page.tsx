import type { Metadata } from 'next';
import { HAZARDS } from '../../shared/schemas/terms';
import { Cautions } from '../_components/cautions';
import { capital } from '../_components/words';

export const metadata: Metadata = { title: 'Safety' };

export default function SafetyPage() {
  return (
    <div className="prose">
      <h1>Safety</h1>
      <p className="lead">
        What is written here is experience that others shared. It is not a certified procedure, and nobody has checked your unit.
      </p>
      <p>
        <strong>Mains-side and picture-tube work belongs to qualified people.</strong> Follow the electrical codes of where you
        live. If you are not sure that a part is safe to touch, it is not.
      </p>
      <h2>What the cautions mean</h2>
      <Cautions hazards={HAZARDS} />
      <h2>Before every job</h2>
      <ul>
        <li>Unplug it, wait, and measure that it is dead before your fingers go in.</li>
        <li>Do not work on live equipment alone. Somebody should know where the switch is.</li>
        <li>Measure the supply apart from the unit before you trust the unit to it.</li>
        <li>One change at a time, and write it down: an attempt that failed is evidence too.</li>
        <li>Old batteries leave first. Clean up what they left before anything is powered.</li>
      </ul>
      <p className="soft small">{capital('common practice of the bench; where a local rule says otherwise, the rule holds.')}</p>
    </div>
  );
}
