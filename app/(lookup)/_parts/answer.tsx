import type { LookUpResult } from '../../../shared/schemas/look-up';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { CauseList } from './cause-list';
import { CheckLadder } from './check-ladder';
import { FixList } from './fix-list';
import { ReadTags } from './read-tags';
import { SimilarCases } from './similar-cases';
import type { Unfolded } from './unfolded';
import { Verdict } from './verdict';
import { WarningsList } from './warnings-list';

type AnswerProps = { question: Question; result: LookUpResult; entries: VocabularyEntry[]; unfolded: Unfolded };

/** Everything that the casebook has to say to one question. On a phone the next check comes before the causes. */
export function Answer({ question, result, entries, unfolded }: AnswerProps) {
  return (
    <>
      <ReadTags question={question} read={result.read} entries={entries} />
      <div id="answer" tabIndex={-1}>
        <Verdict result={result} />
        <WarningsList result={result} />
        <p className="no-print onward">
          <AddressLink href={questionHref('/plan', { ...question, why: null })} className="press" scroll>
            Make a repair plan
          </AddressLink>
          <AddressLink href={questionHref('/bench', { ...question, why: null })} className="press" scroll>
            Start a bench log with this
          </AddressLink>
          <AddressLink href={questionHref('/post', { ...question, why: null })} className="press" scroll>
            I fixed it: post this
          </AddressLink>
          <a href="#causes-head">Causes</a> <a href="#fixes-head">Fixes</a> <a href="#similar-head">Cases</a>
        </p>
      </div>
      <div className="columns">
        <CheckLadder question={question} checks={result.nextChecks} note={result.nextChecksNote} unfolded={unfolded} />
        <CauseList question={question} result={result} unfolded={unfolded} />
      </div>
      <FixList question={question} fixes={result.fixes} unfolded={unfolded} />
      <SimilarCases cases={result.similar} all={questionHref('/search/similar', { ...question, why: null })} />
    </>
  );
}
