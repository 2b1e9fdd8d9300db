'use client';

import { type KeyboardEvent, useDeferredValue, useState } from 'react';
import { suggestEntries } from '../../../../shared/domain/casebook/suggest-entries';
import type { Suggestion } from '../../../../shared/schemas/case-view';
import { type ProposalKind, SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { SuggestionList } from '../../../_components/suggestion-list';
import { useForm } from './form-context';
import { useProposals } from './proposals';

const OFFERED = 8;

type EntryBoxProps = {
  id: string;
  label: string;
  hint?: string;
  kinds: readonly ProposalKind[];
  onChoose: (entry: Suggestion) => void;
};

type Option = { key: string; label: string; meaning: string; choose: () => void };

const wordsIn = (text: string) => text.trim().slice(0, 200);

/**
 * A box with the vocabulary's entries that fit what was typed, after the ARIA pattern of an editable combobox with a
 * list. The last one always proposes what was typed as a new word.
 */
export function EntryBox({ id, label, hint, kinds, onChoose }: EntryBoxProps) {
  const { words } = useForm();
  const { propose } = useProposals();
  const [text, setText] = useState('');
  const [active, setActive] = useState(-1);
  const typed = useDeferredValue(text);
  const choose = (take: () => void) => {
    take();
    setText('');
    setActive(-1);
  };
  const entriesFor = (part: string): Option[] =>
    suggestEntries(words, { text: part, kinds, limit: OFFERED }).map((entry) => ({
      key: `${entry.kind}.${entry.id}`,
      label: kinds.length > 1 ? `${entry.label} (${entry.kind})` : entry.label,
      meaning: entry.meaning,
      choose: () => onChoose(entry),
    }));
  const proposalsOf = (part: string): Option[] =>
    part.length < 3
      ? []
      : kinds.map((kind) => ({
          key: `new ${kind}`,
          label: `Propose “${part}” as a new ${kind}`,
          meaning: 'It goes to review with this case.',
          choose: () => propose(kind, part.slice(0, SUBMISSION_LIMITS.word)),
        }));
  const found = entriesFor(wordsIn(typed));
  const shown = text.trim() === '' ? [] : [...found, ...proposalsOf(wordsIn(typed))];

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setActive((now) => Math.max(-1, Math.min(shown.length - 1, now + (event.key === 'ArrowDown' ? 1 : -1))));
    } else if (event.key === 'Enter') {
      // The first is taken where none is marked: typing and Enter is the short way.
      event.preventDefault();
      // The list may lag behind quick hands: where none is marked, what counts is what is typed by now.
      const part = wordsIn(text);
      const option = active >= 0 ? shown[active] : (entriesFor(part)[0] ?? proposalsOf(part)[0]);
      if (option && part !== '') choose(option.choose);
    } else if (event.key === 'Escape') {
      setText('');
      setActive(-1);
    }
  };

  return (
    <div className="post-field entry-box">
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <p className="soft small" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="none"
        value={text}
        role="combobox"
        aria-describedby={hint ? `${id}-hint` : undefined}
        aria-expanded={shown.length > 0}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={shown[active] ? `${id}-${active}` : undefined}
        onKeyDown={onKeyDown}
        onChange={(event) => {
          setText(event.target.value);
          setActive(-1);
        }}
      />
      <SuggestionList
        id={id}
        label={label}
        options={shown}
        active={active}
        onChoose={(position) => {
          const option = shown[position];
          if (option) choose(option.choose);
        }}
      />
      <p className="sr-only" role="status">
        {shown.length > 0 ? `${found.length} in the list, and a new word can be proposed` : ''}
      </p>
    </div>
  );
}
