import type { Metadata } from 'next';
import Link from 'next/link';
import { planOptionPairs, readPlanOptions } from '../_address/plan-options';
import type { PlanOptions } from '../../shared/schemas/plan';
import { isBlank, type Question, questionHref, readQuestion, type SearchParams } from '../_address/question';
import { vocabularyEntries } from '../_address/vocabulary-entry';
import { attempt } from '../_casebook/attempt';
import { Trouble } from '../_components/trouble';
import { serverCaller } from '../_trpc/server';
import { PlanOptionsForm } from './_parts/plan-options-form';
import { PlanStepList } from './_parts/plan-step-list';
import { PlanSums } from './_parts/plan-sums';
import { PlanUnit } from './_parts/plan-unit';
import { StruckSteps } from './_parts/struck-steps';

export const metadata: Metadata = { title: 'Repair plan' };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function PlanPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const question = readQuestion(params);
  const options = readPlanOptions(params);
  const here = questionHref('/plan', question, planOptionPairs(options));
  if (isBlank(question)) return <NothingAsked />;
  const { value, trouble } = await attempt(() => loadPlan(question, options));

  return (
    <>
      <p className="no-print">
        <Link href={questionHref('/', question)} prefetch={false} className="back">
          ← Back to the look-up
        </Link>
      </p>
      <h1>Repair plan</h1>
      {trouble ? (
        <Trouble kind={trouble} again={here} />
      ) : (
        <>
          <PlanUnit read={value.plan.read} />
          <PlanOptionsForm question={question} options={options} />
          <PlanSums plan={value.plan} />
          <StruckSteps question={question} options={options} struck={value.plan.struck} />
          <PlanStepList question={question} options={options} plan={value.plan} entries={value.entries} />
        </>
      )}
    </>
  );
}

async function loadPlan(question: Question, options: PlanOptions) {
  const caller = serverCaller();
  const [plan, vocabulary] = await Promise.all([caller.plan.make({ question, options }), caller.casebook.listVocabulary()]);
  return { plan, entries: vocabularyEntries(vocabulary) };
}

function NothingAsked() {
  return (
    <>
      <h1>Repair plan</h1>
      <p className="lead">A plan starts from what the unit does. Look it up first; the plan is one press from there.</p>
      <p>
        <Link href="/" prefetch={false} className="press">
          Look up
        </Link>
      </p>
    </>
  );
}
