import type { Explanation, ExplanationAll, LookUpCause } from '../../../shared/schemas/look-up';
import { formatCount, formatDecibans } from '../../_components/format-figures';
import { waterfallScale, WaterfallStep, type WaterfallScale } from '../../_components/waterfall-step';
import { inSentence } from '../../_components/words';

type EvidenceRow = { name: string; detail: string | null; weight: number };

/** The evidence for and against one cause: against its strongest rival, then against all others together. */
export function Evidence({ cause }: { cause: LookUpCause }) {
  return (
    <div className="evidence">
      {cause.against ? <AgainstRival explanation={cause.against} /> : null}
      {cause.againstAll ? <AgainstAll explanation={cause.againstAll} /> : null}
      <p className="small soft">
        Weights of evidence in decibans: 10 dB is odds of ten to one, 3 dB about two to one. Filled bars speak for it, hatched
        bars against.
      </p>
      <p className="small">
        <strong>Usually proved:</strong> {cause.usualProof}
      </p>
    </div>
  );
}

/** Symptoms that nobody mentioned weigh little each and can be a hundred: the strongest have a row, the rest one together. */
const IMPLIED_SHOWN = 6;

function rowsOf(items: Explanation['items']): EvidenceRow[] {
  const implied = items.filter((item) => item.implied).sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight));
  const shown = new Set(implied.slice(0, implied.length > IMPLIED_SHOWN + 1 ? IMPLIED_SHOWN : implied.length));
  const rest = implied.filter((item) => !shown.has(item));
  const rows = items
    .filter((item) => !item.implied || shown.has(item))
    .map((item) => ({
      name: `${item.label}: ${inSentence(item.value)}`,
      detail: item.implied ? 'not mentioned; follows from what was' : null,
      weight: item.weight,
    }));
  if (rest.length === 0) return rows;
  const weight = rest.reduce((sum, item) => sum + item.weight, 0);
  return [...rows, { name: `${formatCount(rest.length)} other symptoms: absent`, detail: 'not mentioned; together', weight }];
}

function AgainstRival({ explanation }: { explanation: Explanation }) {
  return (
    <Waterfall prior={explanation.prior} rows={rowsOf(explanation.items)} total={explanation.total}>
      Against its strongest rival, <strong>{inSentence(explanation.rival.label)}</strong>
    </Waterfall>
  );
}

function AgainstAll({ explanation }: { explanation: ExplanationAll }) {
  const rows = [
    ...rowsOf(explanation.items),
    { name: 'taken together', detail: 'what the findings say jointly beyond each alone', weight: explanation.interaction },
    { name: 'held open', detail: 'a small share of the starting odds is always kept', weight: explanation.mixing },
  ];
  return (
    <Waterfall prior={explanation.prior} rows={rows} total={explanation.total}>
      Against <strong>all other causes</strong>
    </Waterfall>
  );
}

type WaterfallProps = { prior: number; rows: EvidenceRow[]; total: number; children: React.ReactNode };

function Waterfall({ prior, rows, total, children }: WaterfallProps) {
  const scale = waterfallScale(
    prior,
    rows.map((row) => row.weight),
  );
  const starts: number[] = [];
  let sum = prior;
  for (const row of rows) {
    starts.push(sum);
    sum += row.weight;
  }
  return (
    <table>
      <caption>{children}</caption>
      <tbody>
        <SumRow name="before you saw anything" at={prior} scale={scale} />
        {rows.map((row, index) => {
          const from = starts[index] ?? prior;
          return (
            <tr key={row.name}>
              <th scope="row">
                {row.name}
                {row.detail ? <span className="soft"> ({row.detail})</span> : null}
              </th>
              <td className="drawn">
                <WaterfallStep scale={scale} from={from} to={from + row.weight} kind="weight" />
              </td>
              <td className="figure">{formatDecibans(row.weight)}</td>
            </tr>
          );
        })}
        <SumRow name="now" at={total} scale={scale} />
      </tbody>
    </table>
  );
}

function SumRow({ name, at, scale }: { name: string; at: number; scale: WaterfallScale }) {
  return (
    <tr className="sum">
      <th scope="row">{name}</th>
      <td className="drawn">
        <WaterfallStep scale={scale} from={at} to={at} kind="sum" />
      </td>
      <td className="figure">{formatDecibans(at)}</td>
    </tr>
  );
}
