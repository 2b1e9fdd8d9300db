'use client';

import { useState } from 'react';
import { SuggestionList } from '../../_components/suggestion-list';
import { useOptionKeys } from '../../_components/use-option-keys';
import type { SuggestedFinding } from './suggested-findings';
import { useSuggestions } from './use-suggestions';

type FindingBoxProps = { id: string; onChoose: (option: SuggestedFinding) => void };

/** A text box with a list of suggestions, after the ARIA pattern of an editable combobox with a list. */
export function FindingBox({ id, onChoose }: FindingBoxProps) {
  const [text, setText] = useState('');
  const found = useSuggestions(text);
  const { open, active, onKey, onTyped } = useOptionKeys(found.length);
  const shown = open ? found : [];

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
        onKeyDown={(event) => onKey(event, shown, onChoose)}
        onChange={(event) => {
          setText(event.target.value);
          onTyped();
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
