import type { Metadata } from 'next';
import { readQuestion, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { BenchApp } from './_parts/bench-app';
import { loadBenchStart } from './_parts/load-bench-start';
import './bench.css';

export const metadata: Metadata = { title: 'Bench', robots: { index: false } };

export default async function BenchPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const question = readQuestion(await searchParams);
  const { value: start } = await attempt(() => loadBenchStart(question));
  return (
    <div className="bench-page">
      <h1>Bench</h1>
      <p className="lead no-print">
        The running log of the units you work on, with what the casebook makes of every entry. Works without a network.
      </p>
      <noscript>
        <p className="note">The bench needs scripts: it keeps your log in this browser. The look-up and the plan work without.</p>
      </noscript>
      <BenchApp start={start} />
    </div>
  );
}
