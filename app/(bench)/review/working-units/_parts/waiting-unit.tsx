import { judgePart } from '../../../../../shared/domain/readings/judge-part';
import type { Reading } from '../../../../../shared/schemas/case';
import { formatMonth } from '../../../../_components/format-figures';
import { serverCaller } from '../../../../_trpc/server';
import { readingWords } from '../../../bench/_parts/entry-words';
import { verdictReason } from '../../../bench/_parts/usual-words';
import { VERDICT_WORDS, VerdictMark } from '../../../bench/_parts/verdict-mark';
import { decide } from './decide';

type WaitingUnitProps = { unit: { id: string; device: string; month: string; readings: Reading[]; mayDecide: boolean } };

/** One contributed unit: what differs from the working units known so far, all readings folded, and the decision. */
export async function WaitingUnit({ unit }: WaitingUnitProps) {
  const { bench, casebook } = serverCaller();
  const [{ snapshot }, catalogue] = await Promise.all([bench.snapshot({ device: unit.device, have: null }), casebook.getCatalogue()]);
  const model = catalogue.models.find((m) => m.boards.some((board) => board.slug === unit.device));
  const board = model?.boards.find((b) => b.slug === unit.device);
  const parts = board?.parts.filter((part) => unit.readings.some((r) => r.designator === part.designator)) ?? [];
  const judged = parts.map((part) => {
    const own = unit.readings.filter((r) => r.designator === part.designator);
    const working = snapshot?.working.find((p) => p.designator === part.designator) ?? null;
    return { part, own, pins: judgePart(part, { working, faulty: null }, own).pins };
  });
  return (
    <section className="section" aria-labelledby={`unit-${unit.id}`}>
      <h2 id={`unit-${unit.id}`}>
        {model?.name ?? unit.device}, revision {board?.revision ?? '?'}
      </h2>
      <p className="section-sub">
        {formatMonth(unit.month)} · {unit.readings.length} readings at {parts.map((part) => part.designator).join(', ')}
      </p>
      <ul className="verdict-list" aria-label="Readings that differ">
        {judged.flatMap(({ part, own, pins }) =>
          pins
            .filter((pin) => pin.verdict === 'unusual')
            .map((pin) => (
              <li key={`${part.designator} ${pin.pin}`}>
                <VerdictMark verdict="unusual" /> {part.designator} pin {pin.pin} {part.pinNames[Number(pin.pin) - 1] ?? ''}:{' '}
                {readingWords(own.find((r) => r.pin === pin.pin) as Reading)}, {VERDICT_WORDS[pin.verdict]} ({verdictReason(pin)})
              </li>
            )),
        )}
      </ul>
      <details>
        <summary className="press press-small">All readings</summary>
        {judged.map(({ part, own }) => (
          <p key={part.designator} className="log-pin-list">
            <strong>{part.designator}</strong>
            {own.map((r) => (
              <span key={r.pin} className="figure">
                {r.pin} {readingWords(r)}
              </span>
            ))}
          </p>
        ))}
      </details>
      {unit.mayDecide ? (
        <form action={decide} className="bench-keys">
          <input type="hidden" name="id" value={unit.id} />
          <button type="submit" name="accept" value="yes" className="press press-main">
            Accept<span className="sr-only"> the readings of {unit.device}</span>
          </button>
          <button type="submit" name="accept" value="no" className="press">
            Decline<span className="sr-only"> the readings of {unit.device}</span>
          </button>
        </form>
      ) : (
        <p>These are your own: another moderator has to look at them.</p>
      )}
    </section>
  );
}
