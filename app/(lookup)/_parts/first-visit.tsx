import { EMPTY_QUESTION, questionHref } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount } from '../../_components/format-figures';

const EXAMPLES = ['grey screen, clock present', 'dead, no power light, supply fine', 'no sound but picture fine'];

type FirstVisitProps = {
  cases: number;
  devices: number;
  /** The symptoms with most cases. */
  common: readonly { id: string; label: string }[];
};

/** What this is, in a sentence, and something to press. */
export function FirstVisit({ cases, devices, common }: FirstVisitProps) {
  return (
    <section className="section first-visit" aria-labelledby="first-head">
      <h2 id="first-head">Ask before you reach for the iron</h2>
      <p className="section-sub">
        {cases === 0
          ? `A casebook for people who repair vintage consoles and home computers. It knows ${formatCount(devices)} machines and has no case yet: what it says now comes from the vocabulary alone.`
          : `A casebook of ${formatCount(cases)} repairs of ${formatCount(devices)} vintage machines. Write what the unit does and what you measured: it answers with the likely causes, the next check, and how sure that is.`}
      </p>
      <p>Press one to try it:</p>
      <ul className="examples">
        {EXAMPLES.map((text) => (
          <li key={text}>
            <AddressLink href={questionHref('/', { ...EMPTY_QUESTION, text })} className="press">
              {text}
            </AddressLink>
          </li>
        ))}
      </ul>
      {common.length === 0 ? null : (
        <>
          <p>Or see what usually causes:</p>
          <ul className="examples">
            {common.map(({ id, label }) => (
              <li key={id}>
                <AddressLink href={`/symptoms/${id}`} scroll className="press">
                  {label}
                </AddressLink>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
