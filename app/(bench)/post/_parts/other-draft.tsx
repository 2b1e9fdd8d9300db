import type { VocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { FormStart } from './load-start';
import type { LocalDraft } from './local-draft';

type OtherDraftProps = {
  draft: LocalDraft;
  words: VocabularyWords;
  from: FormStart['from'];
  onGoOn: () => void;
  onStart: () => void;
};

/** Asked before anything is written over: this browser still holds another form. */
export function OtherDraft({ draft, words, from, onGoOn, onStart }: OtherDraftProps) {
  const { document } = draft;
  const device = words.devices.get(document.device)?.label ?? 'no device chosen';
  const symptoms = document.symptoms.filter((s) => s.present).map((s) => words.symptoms.get(s.symptom)?.label ?? s.symptom);
  return (
    <section className="section" aria-labelledby="post-other-head">
      <h2 id="post-other-head">This browser holds an unfinished case</h2>
      <p className="section-sub">
        {[device, ...symptoms].join(', ')}; {document.steps.length} checks and fixes.
      </p>
      <p className="post-row-keys">
        <button type="button" className="press press-main" onClick={onGoOn}>
          Go on with it
        </button>
        <button type="button" className="press" onClick={onStart}>
          {from === 'look-up' ? 'Discard it and start from the look-up' : 'Discard it and open the other draft'}
        </button>
      </p>
    </section>
  );
}
