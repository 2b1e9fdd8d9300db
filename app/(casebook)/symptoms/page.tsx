import type { Metadata } from 'next';
import Link from 'next/link';
import { AREAS } from '../../../shared/schemas/terms';
import type { SymptomLine } from '../../../shared/schemas/symptom-view';
import { attempt } from '../../_casebook/attempt';
import { formatCounted, formatPercent } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { Volunteered } from '../../_components/volunteered';
import { AREA_WORDS, inSentence } from '../../_components/words';
import { serverCaller } from '../../_trpc/server';

export const metadata: Metadata = {
  title: 'Symptoms',
  description: 'What units do when they fail, how often, and what it usually was.',
};

export default async function SymptomsPage() {
  const { value: lines, trouble } = await attempt(() => serverCaller().browse.listSymptoms());
  if (trouble) return <Trouble kind={trouble} again="/symptoms" />;
  return (
    <>
      <h1>Symptoms</h1>
      <p className="lead">What units do when they fail, how often, and what it usually was.</p>
      <nav aria-label="Areas" className="areas no-print">
        {AREAS.filter((area) => lines.some((line) => line.area === area)).map((area) => (
          <a key={area} href={`#${area}`}>
            {AREA_WORDS[area]}
          </a>
        ))}
      </nav>
      {AREAS.map((area) => (
        <Area key={area} head={AREA_WORDS[area]} id={area} lines={lines.filter((line) => line.area === area)} />
      ))}
      <Volunteered />
    </>
  );
}

/** The symptoms of one area, those with most cases first. */
function Area({ head, id, lines }: { head: string; id: string; lines: SymptomLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="section" id={id} aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>{head}</h2>
      <ul className="rows">
        {lines
          .toSorted((a, b) => b.cases - a.cases)
          .map((line) => (
            <li className="row browse-row" key={line.id}>
              <Link href={`/symptoms/${line.id}`} prefetch={false} className="row-link">
                {line.label}
              </Link>
              <span className="figure">{line.cases === 0 ? 'no case' : formatCounted(line.cases, 'case')}</span>
              <span className="soft browse-told">
                {line.leading
                  ? `most often ${inSentence(line.leading.label)}, ${formatPercent(line.leading.count / line.leading.of)}`
                  : line.meaning}
              </span>
            </li>
          ))}
      </ul>
    </section>
  );
}
