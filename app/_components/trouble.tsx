import type { TroubleKind } from '../_casebook/attempt';

const WORDS: Record<TroubleKind, { head: string; told: string; todo: string }> = {
  'casebook-empty': {
    head: 'The casebook is empty',
    told: 'There are no devices and no cases in it yet, so it cannot answer.',
    todo: 'On the machine that serves this page, run "npm run demo" for an invented casebook, or import cases.',
  },
  'device-not-found': {
    head: 'No such device',
    told: 'The address names a device that this casebook does not have.',
    todo: 'Choose a device from the list, or any device, and ask again. Your words are kept.',
  },
  'case-not-found': {
    head: 'No such case',
    told: 'It may have been withdrawn, or the address is mistyped.',
    todo: 'Look it up again.',
  },
  'entry-not-found': {
    head: 'No such word',
    told: 'The address names something that the vocabulary of this casebook does not have.',
    todo: 'Choose one from the list of symptoms, parts or fixes.',
  },
  failed: {
    head: 'The casebook did not answer',
    told: 'What you asked is kept in the address.',
    todo: "If it fails again, look at the program's log on the machine that serves this page.",
  },
};

type TroubleProps = { kind: TroubleKind; again: string };

/** Said in place of an answer when the casebook could not give one; what was asked stays in the address. */
export function Trouble({ kind, again }: TroubleProps) {
  const { head, told, todo } = WORDS[kind];
  return (
    <section className="section" role="alert">
      <h2>{head}</h2>
      <p className="section-sub">{told}</p>
      <p>{todo}</p>
      {/* A plain link: whatever failed in the page so far is loaded anew. */}
      <p className="onward">
        <a href={again} className="press">
          Ask again
        </a>
      </p>
    </section>
  );
}
