import type { Metadata } from 'next';
import { attempt } from '../_casebook/attempt';
import { isDemo } from '../_casebook/is-demo';
import { formatCount } from '../_components/format-figures';
import { serverCaller } from '../_trpc/server';
import '../_styles/method.css';
import { MethodCauses } from './_parts/method-causes';
import { MethodChoices } from './_parts/method-choices';
import { MethodEvaluation } from './_parts/method-evaluation';
import { MethodLimits } from './_parts/method-limits';
import { MethodPages } from './_parts/method-pages';

export const metadata: Metadata = { title: 'How it is counted' };

export default async function MethodPage() {
  const { value: method } = await attempt(() => serverCaller().casebook.method());
  return (
    <div className="prose method">
      <h1>How it is counted</h1>
      <p className="lead">Where the figures come from, in plain words first and then as formulas, and what they cannot say.</p>
      {method ? (
        <p>
          The figures of today rest on {formatCount(method.records)} accepted cases. The settings of the model carry the mark{' '}
          <code className="figure">{method.settingsHash.slice(0, 12)}</code>, so that two answers can be told to come from the
          same ones.
        </p>
      ) : null}
      <MethodCauses />
      <MethodChoices />
      <MethodPages />
      <MethodEvaluation evaluation={method?.evaluation ?? null} demo={await isDemo()} />
      <MethodLimits />
    </div>
  );
}
