import { EMPTY_QUESTION, questionHref } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount } from '../../_components/format-figures';

const EXAMPLES = ['grey screen, clock present', 'dead, no power light, supply fine', 'no sound but picture fine'];

/** What this is, in a sentence, and something to press. */
export function FirstVisit({ cases, devices }: { cases: number; devices: number }) {
  return (
    <section className="section first-visit" aria-labelledby="first-head">
      <h2 id="first-head">Ask before you reach for the iron</h2>
      <p className="section-sub">
        Write what the unit does and what you measured; {formatCount(cases)} cases from {formatCount(devices)} machines answer
        with the likely causes, the next check and how sure that is.
      </p>
      <p>For example:</p>
      <ul className="examples">
        {EXAMPLES.map((text) => (
          <li key={text}>
            <AddressLink href={questionHref('/', { ...EMPTY_QUESTION, text })} className="press">
              {text}
            </AddressLink>
          </li>
        ))}
      </ul>
    </section>
  );
}
