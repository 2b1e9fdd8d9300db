/**
 * How well a repair told twice is found again, and how often an unrelated case is taken for one, on the demo world:
 * `npx tsx tests/measure/duplicates.ts [cases] [tries]`. Tellings: the same text and findings but for another month;
 * every eighth word changed and a step and a symptom left out; the same findings in other words.
 */
import { catalogue } from '../../seed/catalogue';
import { demoWorld } from '../../seed/demo-world';
import { seededRandom } from '../../seed/random';
import { vocabulary } from '../../seed/vocabulary';
import { addCase, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { contradictionsIn } from '../../shared/domain/review/contradictions';
import { comparedCase, duplicateCandidates, LIKELY_DUPLICATE, likenessOf } from '../../shared/domain/review/likely-duplicates';
import type { CaseContent } from '../../shared/schemas/case';
import { caseIdFrom } from '../../server/ids';

const count = Number(process.argv[2] ?? 4200);
const tries = Number(process.argv[3] ?? 200);
const random = seededRandom('duplicates');
const newId = () => caseIdFrom(Uint8Array.from({ length: 10 }, () => Math.floor(random() * 256)));

const model = createCasebookModel(vocabulary, catalogue);
const byId = new Map<string, CaseContent>();
for (const { content } of demoWorld.drawCases(20_261_101, count)) {
  const id = newId();
  byId.set(id, content);
  addCase(model, { id, status: 'accepted', content });
}
const fresh = demoWorld.drawCases(77, tries).map(({ content }) => content);

function changed(content: CaseContent): CaseContent {
  const words = content.narrative.split(' ').map((word, i) => (i % 8 === 5 ? `${word}x` : word));
  const drop = content.steps.findIndex((step, i) => step.kind === 'check' && i !== content.provedByStep);
  return {
    ...content,
    narrative: words.join(' '),
    symptoms: content.symptoms.slice(0, Math.max(1, content.symptoms.length - 1)),
    steps: content.steps.filter((_, i) => i !== drop),
    provedByStep: null,
  };
}

const tellings: Record<string, (content: CaseContent, other: CaseContent) => CaseContent> = {
  'same but the month': (content) => ({ ...content, month: '2026-11' }),
  'changed words and findings': changed,
  'other words': (content, other) => ({ ...content, narrative: other.narrative }),
};

/** The most alike among the candidates, and where the one looked for stands. */
function search(content: CaseContent) {
  const own = comparedCase(model.coding, content);
  return duplicateCandidates(model, newId(), content)
    .map((id) => ({ id, likeness: likenessOf(model, own, comparedCase(model.coding, byId.get(id) as CaseContent)) }))
    .sort((a, b) => b.likeness.similarity - a.likeness.similarity);
}

const percent = (n: number, of: number) => `${((100 * n) / of).toFixed(1)} %`;
const quantile = (numbers: number[], q: number) => [...numbers].sort((a, b) => a - b)[Math.floor(q * (numbers.length - 1))]?.toFixed(3);

const ids = [...byId.keys()].filter((_, i) => i % Math.floor(count / tries) === 0).slice(0, tries);
for (const [name, tell] of Object.entries(tellings)) {
  let candidate = 0;
  let found = 0;
  const scores: number[] = [];
  ids.forEach((id, i) => {
    const hits = search(tell(byId.get(id) as CaseContent, fresh[i] as CaseContent));
    const hit = hits.findIndex((other) => other.id === id);
    if (hit >= 0) candidate += 1;
    const similarity = hits[hit]?.likeness.similarity ?? 0;
    scores.push(similarity);
    if (similarity >= LIKELY_DUPLICATE && hit < 4) found += 1;
  });
  console.log(name, 'among the candidates', percent(candidate, tries), 'shown', percent(found, tries), 'similarity 5 %', quantile(scores, 0.05), 'median', quantile(scores, 0.5));
}
const best = fresh.map((content) => search(content)[0]?.likeness.similarity ?? 0);
console.log('unrelated taken for one', percent(best.filter((s) => s >= LIKELY_DUPLICATE).length, tries), 'median', quantile(best, 0.5), '90 %', quantile(best, 0.9), '95 %', quantile(best, 0.95), '99 %', quantile(best, 0.99));

const kinds = new Map<string, number>();
let contradicted = 0;
for (const content of byId.values()) {
  const found = contradictionsIn(model.words, content);
  if (found.length > 0) contradicted += 1;
  for (const kind of new Set(found.map((c) => c.kind))) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
}
console.log('cases with a contradiction', percent(contradicted, byId.size));
for (const [kind, n] of [...kinds].sort((a, b) => b[1] - a[1])) console.log(`  ${kind}`, percent(n, byId.size));
