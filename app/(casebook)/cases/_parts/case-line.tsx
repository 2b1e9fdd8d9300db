import Link from 'next/link';
import type { ReactNode } from 'react';
import type { CaseListItem } from '../../../../shared/schemas/case-view';
import { formatMonth } from '../../../_components/format-figures';
import { CASE_OUTCOME_WORDS, capital, inSentence, joinWords } from '../../../_components/words';

/** One case on one line of a list: what it showed, what it was and how it ended. `children` stand below what it showed. */
export function CaseLine({ item, children }: { item: CaseListItem; children?: ReactNode }) {
  const causes = item.causes.map((cause) => [inSentence(cause.label), ...cause.designators].join(' '));
  return (
    <li className="row case-line">
      <div>
        <Link href={`/cases/${item.id}`} prefetch={false}>
          {item.symptoms.length > 0 ? capital(joinWords(item.symptoms.map(inSentence))) : 'No symptom recorded'}
        </Link>
        {children}
        <p className="case-told">
          {item.device.label}, {formatMonth(item.month)}
        </p>
      </div>
      <p className="case-end">
        {causes.length > 0 ? capital(joinWords(causes)) : 'Cause not found'}. {capital(CASE_OUTCOME_WORDS[item.outcome])}.
      </p>
    </li>
  );
}
