import { describe, expect, it } from 'vitest';
import { retractCase } from '../../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { prepareAnswer } from '../../../shared/domain/look-up/prepare-answer';
import { readQuestion } from '../../../shared/domain/look-up/read-question';
import { questionSchema } from '../../../shared/schemas/question';
import { smallCases } from '../../server/fixtures/small-cases';
import { smallModel } from '../../server/fixtures/small-model';

const cases = smallCases(120);
const question = questionSchema.parse({ text: 'grey screen', device: cases[0]?.content.device ?? null });

describe('an answer made ready in steps', () => {
  it('is the answer that is given without, to the last digit', () => {
    const [ready, plain] = [smallModel(cases), smallModel(cases)];
    expect([...prepareAnswer(ready, question)].length).toBeGreaterThan(ready.coding.vocabulary.checks.length);
    expect(lookUp(ready, question)).toEqual(lookUp(plain, question));
  });

  it('is the answer for the cases as they are when it is given, also where they change between two steps', () => {
    const [ready, plain] = [smallModel(cases), smallModel(cases)];
    const taken = cases[3]?.id ?? '';
    const steps = prepareAnswer(ready, question);
    for (let step = 0; step < 10; step += 1) steps.next();
    retractCase(ready, taken);
    for (const _ of steps);
    retractCase(plain, taken);
    expect(lookUp(ready, question)).toEqual(lookUp(plain, question));
  });

  it('is not worked out beforehand: intervals cost more than all the rest, and are drawn once', () => {
    const model = smallModel(cases);
    const posterior = () => {
      throw new Error('The answer itself was worked out.');
    };
    expect([...prepareAnswer({ ...model, estimator: { ...model.estimator, posterior } }, question)].length).toBeGreaterThan(0);
  });

  it('leaves no table of a check to be made', () => {
    const model = smallModel(cases);
    const coded = readQuestion(model, question);
    const made: Float64Array[] = [];
    const { outcomeTable } = model.estimator;
    for (const _ of prepareAnswer({ ...model, estimator: { ...model.estimator, outcomeTable: (...asked) => note(outcomeTable(...asked)) } }, question));
    function note(table: ReturnType<typeof outcomeTable>) {
      made.push(table.table);
      return table;
    }
    const checks = model.coding.vocabulary.checks.map(({ slug }) => model.coding.observableOf('check', slug));
    const asked = checks.map((observable) => outcomeTable(coded.device, observable as number, coded.findings).table);
    expect(asked.length).toBe(made.length);
    expect(asked.every((table, i) => table === made[i])).toBe(true);
  });
});
