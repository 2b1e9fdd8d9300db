'use client';

import { type KeyboardEvent, useState } from 'react';
import { SuggestionList } from '../../_components/suggestion-list';
import type { SuggestedFinding } from './suggested-findings';
import { useSuggestions } from './use-suggestions';

type FindingBoxProps = { id: string; onChoose: (option: SuggestedFinding) => void };

/** A text box with a list of suggestions, after the ARIA pattern of an editable combobox with a list. */
export function FindingBox({ id, onChoose }: FindingBoxProps) {
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const found = useSuggestions(text);
  const shown = open ? found : [];

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setOpen(true);
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setActive((now) => Math.max(-1, Math.min(found.length - 1, now + step)));
    } else if (event.key === 'Enter' && shown[active]) {
      event.preventDefault();
      onChoose(shown[active]);
    } else if (event.key === 'Escape') {
      setOpen(false);
      setActive(-1);
    }
  };

  return (
    <>
      <input
        id={`${id}-box`}
        type="text"
        name="also"
        autoComplete="off"
        value={text}
        role="combobox"
        aria-expanded={shown.length > 0}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={shown[active] ? `${id}-${active}` : undefined}
        onKeyDown={onKeyDown}
        onChange={(event) => {
          setText(event.target.value);
          setOpen(true);
          setActive(-1);
        }}
      />
      <button type="submit" className="press">
        Add
      </button>
      <SuggestionList
        id={id}
        label="Suggestions"
        options={shown.map(({ label }) => ({ key: label, label }))}
        active={active}
        onChoose={(position) => {
          const option = shown[position];
          if (option) onChoose(option);
        }}
      />
      <p className="sr-only" role="status">
        {open && text.trim() !== '' ? `${shown.length} suggestions` : ''}
      </p>
    </>
  );
}
