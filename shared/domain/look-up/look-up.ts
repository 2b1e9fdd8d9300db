import type { LookUpFigures, LookUpResult } from '../../schemas/look-up';
import type { Question } from '../../schemas/question';
import { countOnDevice, matchingCounts } from '../../stats/matching-counts';
import { renameQuestion } from '../words/rename-content';
import type { CasebookModel } from '../casebook/casebook-model';
import { fixRecord } from '../casebook/fix-record';
import { likelyCauses } from './likely-causes';
import { nextCheckRows } from './next-check-rows';
import { type CodedQuestion, readQuestion } from './read-question';
import { similarCases } from './similar-cases';
import { warningsOn } from './warnings';

const FIXES_SHOWN = 20;

/**
 * Answers a question from the accepted records: how it was read, the likely causes with their evidence, what to check
 * next, what cured such units, and the cases most like it. Pure: the same model and question give the same answer.
 * Causes and `unlisted` sum to 1. The texts of similar cases are added by `withExcerpts`. Words that mean nothing here are no error: they come back as unread.
 */
export function lookUp(model: CasebookModel, asked: Question): LookUpFigures {
  const question = renameQuestion(model.words.aliases, asked);
  const coded = readQuestion(model, question);
  const posterior = model.estimator.posterior(coded.device, coded.findings);
  const counts = matchingCounts(model.index, coded.findings);
  const unlisted = model.coding.causes.length;
  const { nextChecks, note } = nextCheckRows(model, coded, posterior.probability);
  const answer = {
    read: coded.read,
    cases: caseCounts(model, coded, counts),
    unlisted: {
      probability: posterior.probability[unlisted] as number,
      low: posterior.low[unlisted] as number,
      high: posterior.high[unlisted] as number,
    },
  };
  return {
    ...answer,
    causes: likelyCauses(model, { question: coded, posterior, counts, why: question.why }),
    similar: similarCases(model, coded),
    nextChecks,
    nextChecksNote: note,
    fixes: fixesFor(model, coded),
    warnings: warningsOn(question, answer),
  };
}

function caseCounts(
  model: CasebookModel,
  coded: CodedQuestion,
  { total, matching, compatible, causeNotFound }: ReturnType<typeof matchingCounts>,
): LookUpResult['cases'] {
  const here = coded.device === 0 ? { total, matching } : countOnDevice(model.index, coded.findings, coded.device);
  return { total, matching, compatible, causeNotFound, onDevice: here.total, matchingOnDevice: here.matching };
}

/** Fixes tried on cases with the same present symptoms; none where no symptom is stated. */
function fixesFor(model: CasebookModel, { read }: CodedQuestion): LookUpResult['fixes'] {
  const symptoms = read.findings.filter((f) => f.kind === 'symptom' && f.value === 'present').map((f) => f.id);
  if (symptoms.length === 0) return [];
  return fixRecord(model, { symptoms, device: read.device?.slug ?? null }).slice(0, FIXES_SHOWN);
}
