/** Median size of the interaction term of the explanation against all others: `npx tsx tests/measure/interaction.ts [cases]`. */
import { demoWorld } from '../../seed/demo-world';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { countAll } from '../../shared/stats/count-all';
import { CUTS, cutRecord } from '../../shared/stats/cut-record';
import { explainAgainstAll } from '../../shared/stats/explain';
import { fitSettings } from '../../shared/stats/fit-settings';
import { topCauses } from '../../shared/stats/score-board';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';

const cases = Number(process.argv[2] ?? 500);
const coding = createCoding(demoWorld.vocabulary, demoWorld.catalogue);
const records = demoWorld.drawCases(1, cases + 200).map(({ content }) => encodeCase(coding, content));
const learned = records.slice(0, cases);
const estimator = createEstimator(coding.layout, countAll(coding.layout, learned), fitSettings(coding.layout, learned));
CUTS.forEach((cut, at) => {
  const sizes = records.slice(cases).map((record) => {
    const { findings, lengths } = cutRecord(coding.layout, record);
    const query = { device: record.device, findings: findings.slice(0, lengths[at]) };
    const top = topCauses(estimator.probabilities(query.device, query.findings), 1)[0] as number;
    return Math.abs(explainAgainstAll(estimator, query, top).interaction);
  });
  sizes.sort((a, b) => a - b);
  console.log(`${cases} cases | ${cut} | median |interaction| of the likeliest cause ${(sizes[sizes.length >> 1] as number).toFixed(1)} decibans`);
});
