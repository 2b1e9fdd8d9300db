import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { QUESTION_TEXT_LENGTH } from '../../shared/schemas/question';
import { withWords } from '../_address/edit-question';
import { firstOf, isBlank, questionHref, readQuestion, type Question, type SearchParams } from '../_address/question';
import { vocabularyEntries, type VocabularyEntry } from '../_address/vocabulary-entry';
import { attempt } from '../_casebook/attempt';
import { Answer } from './_parts/answer';
import { AskForm } from './_parts/ask-form';
import { deviceGroups } from '../_components/device-choice';
import { FirstVisit } from './_parts/first-visit';
import { FocusAnswer } from './_parts/focus-answer';
import { HiddenQuestion } from './_parts/hidden-question';
import { readUnfolded, type Unfolded } from './_parts/unfolded';
import { Trouble } from '../_components/trouble';
import { serverCaller } from '../_trpc/server';

/** Symptoms that a newcomer is offered. */
const COMMONEST = 6;

type PageProps = { searchParams: Promise<SearchParams> };

export async function generateMetadata({ searchParams }: PageProps): Promise<Metadata> {
  const { text } = readQuestion(await searchParams);
  return { title: text.trim() === '' ? 'Look up' : text.slice(0, 80) };
}

export default async function LookUpPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const question = readQuestion(params);
  const here = questionHref('/', question);
  const { value: data, trouble } = await attempt(loadAskData);
  const entries = data ? vocabularyEntries(data.vocabulary) : [];
  const also = firstOf(params, 'also');
  // Words written into "add a finding" without taking a suggestion join those that are there.
  if (also !== null) redirect(questionHref('/', withWords(question, also)));

  return (
    <>
      <h1 className="sr-only">Look up a fault</h1>
      <AskForm
        question={{ text: question.text, device: question.device, complete: question.complete }}
        asked={!isBlank(question)}
        groups={data ? deviceGroups(data.catalogue) : []}
        longest={QUESTION_TEXT_LENGTH}
      >
        <HiddenQuestion question={question} leaveOut={['q', 'on', 'all', 'why']} />
      </AskForm>
      {trouble ? <Trouble kind={trouble} again={here} /> : null}
      {data && isBlank(question) ? <Newcomer cases={data.overview.cases} devices={data.overview.devices} /> : null}
      {data && !isBlank(question) ? <AnswerTo question={question} entries={entries} unfolded={readUnfolded(params)} /> : null}
      <FocusAnswer address={here} />
    </>
  );
}

async function Newcomer({ cases, devices }: { cases: number; devices: number }) {
  const { value: lines } = await attempt(() => serverCaller().browse.listSymptoms());
  const seen = (lines ?? []).filter((line) => line.cases > 0).sort((a, b) => b.cases - a.cases);
  return <FirstVisit cases={cases} devices={devices} common={seen.slice(0, COMMONEST)} />;
}

async function loadAskData() {
  const { casebook } = serverCaller();
  const [vocabulary, catalogue, overview] = await Promise.all([
    casebook.listVocabulary(),
    casebook.getCatalogue(),
    casebook.overview(),
  ]);
  return { vocabulary, catalogue, overview };
}

type AnswerToProps = { question: Question; entries: VocabularyEntry[]; unfolded: Unfolded };

async function AnswerTo({ question, entries, unfolded }: AnswerToProps) {
  const { value: result, trouble } = await attempt(() => serverCaller().lookup.ask(question));
  if (trouble) return <Trouble kind={trouble} again={questionHref('/', question)} />;
  return <Answer question={question} result={result} entries={entries} unfolded={unfolded} />;
}
