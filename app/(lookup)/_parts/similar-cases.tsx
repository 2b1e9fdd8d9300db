import Link from 'next/link';
import type { SimilarCase } from '../../../shared/schemas/look-up';
import { SimilarList } from '../../_components/similar-list';

type SimilarCasesProps = { cases: SimilarCase[]; /** Address of the page with all of them. */ all: string };

/** The cases most like this unit: what they share with it, what speaks against, what it was and how it ended. */
export function SimilarCases({ cases, all }: SimilarCasesProps) {
  return (
    <section className="section" aria-labelledby="similar-head">
      <h2 id="similar-head">Cases like yours</h2>
      <p className="section-sub">
        What they share with your unit, what contradicts it, and how they ended. The figure says how alike they are.
      </p>
      {cases.length === 0 ? <p>No case on record shares a finding with yours.</p> : null}
      <SimilarList cases={cases} />
      {cases.length === 0 ? null : (
        <p className="onward no-print">
          <Link href={all} prefetch={false}>
            All similar cases
          </Link>
        </p>
      )}
    </section>
  );
}
