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
      <h2>Stored charge: how to discharge a capacitor</h2>
      <p>
        For parts that you may work on. Picture tubes, and whatever hangs directly on the mains, are left to licensed or qualified
        people.
      </p>
      <ol>
        <li>Switch off, unplug, and keep the plug in sight. Wait at least as long as a warning on the unit says.</li>
        <li>One hand, dry, nothing metal on it. Leads and probes rated for the voltage.</li>
        <li>
          Measure across the capacitor with the meter on its direct voltage range. Trust the meter only after you have seen it read
          a voltage that you know.
        </li>
        <li>
          Above the touch limit: bridge the terminals through a resistor in an insulated holder, never with bare metal. A few
          kiloohms, and able to take the heat: 150 microfarads at 330 V through 2.2 kiloohms need .56 s to come down to 60 V, and put
          some 8 joules into the resistor.
        </li>
        <li>Measure again. Wait a minute and measure once more: charge can creep back.</li>
      </ol>
      <p>
        <strong>Touch limit: 60 V direct voltage.</strong> Live parts have to fall to 60 V or less within 5 s after switching off,
        or carry a warning with the time to wait (IEC 60204-1, clause 6.2.4); up to 60 V direct, or 30 V r.m.s. and 42.4 V peak
        alternating, counts as the lowest class of energy source (IEC 62368-1). Wet skin, cuts and the dry-skin limits of your own
        rules may ask for less.
      </p>
      <p className="soft small">{capital('common practice of the bench; where a local rule says otherwise, the rule holds.')}</p>
    </div>
  );
}
