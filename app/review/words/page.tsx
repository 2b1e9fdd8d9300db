import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { type WordKind, wordKindSchema } from '../../../shared/schemas/word-edit';
import { firstOf, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { ReviewNav } from '../../_components/review-nav';
import { serverCaller } from '../../_trpc/server';
import '../../_styles/log.css';
import { addEntry } from './_actions/change-words';
import { ChangeList } from './_parts/change-list';
import { EntryCare } from './_parts/entry-care';
import { EntryFinder } from './_parts/entry-finder';
import { KIND_WORDS, KINDS } from './_parts/kind-words';
import { ProposedWords } from './_parts/proposed-words';
import { UnreadWords } from './_parts/unread-words';
import { WordForm } from './_parts/word-form';

export const metadata: Metadata = { title: 'Care of the words', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

const FOUND_MOST = 20;

/** Where moderators look after the vocabulary. */
export default async function WordCarePage({ searchParams }: PageProps) {
  const account = await serverCaller().account.me();
  if (account === null) redirect('/sign-in?next=/review/words');
  if (account.role !== 'moderator' && account.role !== 'keeper') return <NotForYou />;
  const params = await searchParams;
  const kind = wordKindSchema.catch('symptom').parse(firstOf(params, 'kind'));
  const named = (firstOf(params, 'named') ?? '').trim().slice(0, 80);
  const { value, trouble } = await attempt(async () => ({
    care: await serverCaller().word.care(),
    vocabulary: await serverCaller().casebook.listVocabulary(),
  }));
  if (trouble) return <Trouble kind={trouble} again="/review/words" />;
  const { care, vocabulary } = value;
  const entries = {
    symptom: vocabulary.symptoms,
    check: vocabulary.checks,
    cause: vocabulary.causes,
    fix: vocabulary.fixes,
  } satisfies Record<WordKind, unknown>;
  const entry = entries[kind].find(({ slug }) => slug === firstOf(params, 'entry'));
  const goesBy = ({ label, synonyms }: { label: string; synonyms: string[] }) =>
    [label, ...synonyms].some((name) => name.toLowerCase().includes(named.toLowerCase()));
  return (
    <div className="word-page">
      <ReviewNav />
      <h1>Care of the words</h1>
      <p className="lead">
        What the casebook can be told, and what it goes by. Every change shows in look-ups at once, and every one can be undone.
      </p>
      <section className="section" aria-labelledby="find-head">
        <h2 id="find-head">An entry</h2>
        <EntryFinder kind={kind} text={named} found={named === '' ? [] : entries[kind].filter(goesBy).slice(0, FOUND_MOST)} />
      </section>
      {entry ? <EntryCare kind={kind} entry={entry} others={entries[kind]} key={`${kind} ${entry.slug}`} /> : null}
      <section className="section" aria-labelledby="changes-head">
        <h2 id="changes-head">Changes</h2>
        <ChangeList edits={care.edits} />
      </section>
      <section className="section" aria-labelledby="proposed-head">
        <h2 id="proposed-head">Proposed words</h2>
        <ProposedWords proposed={care.proposed} entries={entries} />
      </section>
      <section className="section" aria-labelledby="unread-head">
        <h2 id="unread-head">Unread words</h2>
        <UnreadWords unread={care.unread} leastShown={care.leastShown} />
      </section>
      <section className="section" aria-labelledby="add-head">
        <h2 id="add-head">A new entry</h2>
        <p className="section-sub">
          It takes from a similar entry what is not asked here: where it can occur, stage, tools, outcomes, parts.
        </p>
        {KINDS.map((name) => (
          <details key={name}>
            <summary>Add a {KIND_WORDS[name].one}</summary>
            <WordForm
              action={addEntry}
              hidden={{ kind: name }}
              submit={`Add the ${KIND_WORDS[name].one}`}
              doneText="It is added, and look-ups read it."
              fields={[
                { name: 'label', label: 'Label', kind: 'line' },
                { name: 'meaning', label: 'Meaning, in one sentence', kind: 'area' },
                { name: 'synonyms', label: 'What else it goes by', kind: 'area', hint: 'One a line; may be left empty.' },
                {
                  name: 'like',
                  label: 'Similar to',
                  kind: 'choice',
                  options: entries[name].map(({ slug, label }) => ({ value: slug, label })),
                },
              ]}
            />
          </details>
        ))}
      </section>
    </div>
  );
}

function NotForYou() {
  return (
    <>
      <h1>Care of the words</h1>
      <p>This page is for moderators. A keeper of this site can give you that role.</p>
    </>
  );
}
