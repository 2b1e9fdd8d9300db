import { execFileSync } from 'node:child_process';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { CodedFinding } from '../../../shared/stats/layout';
import { liveRows, readRow } from '../../../shared/stats/record-index';
import { fasterRow, paired, type Row, timesOf } from '../run/measure';
import { randomOf } from '../world/draw';

const FINDINGS = 12;
/** Devices that questions are about: people ask about some more than others, and the tables of a device are kept. */
const DEVICES_ASKED = 8;

type Question = { device: number; findings: CodedFinding[] };

function questionsOf({ coding, index }: CasebookModel, count: number): Question[] {
  const random = randomOf(21);
  const boards = coding.devices.flatMap((node, n) => (node.level === 'board' ? [n] : [])).slice(0, DEVICES_ASKED);
  return Array.from({ length: count }, () => {
    const findings = new Map<number, CodedFinding>();
    while (findings.size < FINDINGS) {
      const { findings: stated } = readRow(index, Math.floor(random() * index.rows));
      for (const { flat } of stated) {
        const observable = index.observables[flat] as number;
        if (findings.size < FINDINGS) findings.set(observable, { observable, value: flat - (index.layout.valueStarts[observable] as number) });
      }
    }
    return { device: boards[Math.floor(random() * boards.length)] as number, findings: [...findings.values()] };
  });
}

/** Counts as somebody would keep them who writes naive Bayes in an evening. */
type Plain = { prior: Record<string, number>; likelihood: Record<string, Record<string, Record<string, number>>> };

function learnPlain({ index, coding }: CasebookModel): Plain {
  const plain: Plain = { prior: {}, likelihood: {} };
  for (const row of liveRows(index)) {
    const { causes, findings } = readRow(index, row);
    const cause = coding.causes[causes[0] ?? -1];
    if (cause === undefined) continue;
    plain.prior[cause] = (plain.prior[cause] ?? 0) + 1;
    plain.likelihood[cause] ??= {};
    const own = plain.likelihood[cause];
    for (const { flat } of findings) {
      const observable = index.observables[flat] as number;
      const { id, values } = coding.observables[observable] as (typeof coding.observables)[number];
      const value = values[flat - (index.layout.valueStarts[observable] as number)] as string;
      own[id] ??= {};
      (own[id] as Record<string, number>)[value] = ((own[id] as Record<string, number>)[value] ?? 0) + 1;
    }
  }
  return plain;
}

function askPlain(plain: Plain, findings: readonly { id: string; value: string; values: number }[]): Record<string, number> {
  const scores: Record<string, number> = {};
  for (const cause of Object.keys(plain.prior)) {
    let score = Math.log(plain.prior[cause] as number);
    for (const { id, value, values } of findings) {
      const counts = plain.likelihood[cause]?.[id] ?? {};
      const total = Object.values(counts).reduce((sum, n) => sum + n, 0);
      score += Math.log(((counts[value] ?? 0) + 1) / (total + values));
    }
    scores[cause] = score;
  }
  const top = Math.max(...Object.values(scores));
  const weights = Object.entries(scores).map(([cause, score]) => [cause, Math.exp(score - top)] as const);
  const sum = weights.reduce((total, [, weight]) => total + weight, 0);
  return Object.fromEntries(weights.map(([cause, weight]) => [cause, weight / sum]));
}

/** The posterior beside naive Bayes over plain objects, and beside scikit-learn where python3 has it. */
export function posteriorRows(model: CasebookModel, rounds: number): Row[] {
  const plain = learnPlain(model);
  const questions = questionsOf(model, rounds).map((question) => ({
    ...question,
    named: question.findings.map(({ observable, value }) => {
      const { id, values } = model.coding.observables[observable] as (typeof model.coding.observables)[number];
      return { id, value: values[value] as string, values: values.length };
    }),
  }));
  for (const { device, findings } of questions) model.estimator.probabilities(device, findings);
  const measured = paired(
    questions,
    ({ device, findings }) => model.estimator.probabilities(device, findings),
    ({ named }) => askPlain(plain, named),
  );
  const work = `posterior, 300 causes, ${FINDINGS} findings`;
  const note = `tables of the device kept: questions about ${DEVICES_ASKED} boards`;
  const row = fasterRow({ id: 'posterior', work, alternative: 'plain-object naive Bayes in JS' }, measured, { atLeast: 15, note });
  return [row, sklearnRow(work, measured.ours)];
}

function sklearnRow(work: string, ours: { median: number; p95: number }): Row {
  const head = { id: 'posterior-sklearn', work, alternative: "scikit-learn's CategoricalNB" };
  let times: number[];
  try {
    times = JSON.parse(execFileSync('python3', ['-c', SKLEARN], { stdio: ['ignore', 'pipe', 'ignore'], timeout: 120_000 }).toString()) as number[];
  } catch {
    const missing = 'not measured: python3 has no scikit-learn here';
    return { ...head, asked: 'at least 4 times faster', ours: '', theirs: '', ratio: null, ratioText: missing, met: null };
  }
  const theirs = timesOf(times);
  return fasterRow(head, { ours, theirs, ratio: theirs.median / ours.median }, { atLeast: 4, note: 'one question at a time, 12 columns' });
}

const SKLEARN = `
import json, time
import numpy as np
from sklearn.naive_bayes import CategoricalNB
r = np.random.default_rng(1)
X = r.integers(0, 3, (30000, ${FINDINGS})); y = np.concatenate([np.arange(300), r.integers(0, 300, 29700)])
m = CategoricalNB(min_categories=3).fit(X, y)
q = r.integers(0, 3, (300, 1, ${FINDINGS}))
t = []
for x in q:
    s = time.perf_counter(); m.predict_proba(x); t.append((time.perf_counter() - s) * 1000)
print(json.dumps(t[50:]))
`;
