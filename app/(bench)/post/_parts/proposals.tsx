'use client';

import { type Proposal, type ProposalKind, SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { RemoveIcon } from '../../../_components/icons';
import { Fault, Field } from './field';
import { fieldId, useForm } from './form-context';
import { newRowKey } from './local-draft';

/** Adds, changes and removes words proposed with the case. */
export function useProposals() {
  const { update, announce } = useForm();
  return {
    propose: (kind: ProposalKind, word: string) => {
      update((now) => ({ ...now, proposals: [...now.proposals, { key: newRowKey(), kind, word, meaning: '' }] }));
      announce(`${word} is proposed as a new ${kind}. Say what it means.`);
    },
    change: (key: string, over: Partial<Proposal>) =>
      update((now) => ({ ...now, proposals: now.proposals.map((p) => (p.key === key ? { ...p, ...over } : p)) })),
    remove: (key: string) => update((now) => ({ ...now, proposals: now.proposals.filter((p) => p.key !== key) })),
  };
}

/** The proposed words of these kinds, where they were needed, each with its meaning. */
export function Proposals({ kinds }: { kinds: readonly ProposalKind[] }) {
  const { document } = useForm();
  const { change, remove } = useProposals();
  return document.proposals.map((proposal, i) =>
    kinds.includes(proposal.kind) ? (
      <fieldset key={proposal.key} className="post-row" id={fieldId(`proposals.${i}`)}>
        <legend>New {proposal.kind}, for review</legend>
        <div className="post-row-fields">
          <Field field={`proposals.${i}.word`} label="Word">
            {(tie) => (
              <input
                {...tie}
                type="text"
                maxLength={SUBMISSION_LIMITS.word}
                value={proposal.word}
                onChange={(e) => change(proposal.key, { word: e.target.value })}
              />
            )}
          </Field>
          <Field field={`proposals.${i}.meaning`} label="What it means, in a sentence">
            {(tie) => (
              <textarea
                {...tie}
                rows={2}
                maxLength={SUBMISSION_LIMITS.meaning}
                value={proposal.meaning}
                onChange={(e) => change(proposal.key, { meaning: e.target.value })}
              />
            )}
          </Field>
        </div>
        <Fault field={`proposals.${i}`} />
        <button type="button" className="press press-small" onClick={() => remove(proposal.key)}>
          <RemoveIcon /> Take back <span className="sr-only">{proposal.word}</span>
        </button>
      </fieldset>
    ) : null,
  );
}
