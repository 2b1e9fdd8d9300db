'use client';

import { lazy, Suspense, useCallback, useState } from 'react';
import type { Question } from '../../_address/question';
import { SuggestionList } from '../../_components/suggestion-list';
import { useOptionKeys } from '../../_components/use-option-keys';

/** A finding that is offered, and the address of the question with it. */
export type FindingOption = { key: string; label: string; href: string };

/** The part that asks the server comes only when somebody turns to the box: most visits never need it. */
const FindingOptions = lazy(async () => ({ default: (await import('./finding-options')).FindingOptions }));

type FindingBoxProps = { id: string; question: Question; onChoose: (href: string) => void };

/** A text box with a list of suggestions, after the ARIA pattern of an editable combobox with a list. */
export function FindingBox({ id, question, onChoose }: FindingBoxProps) {
  const [text, setText] = useState('');
  const [touched, setTouched] = useState(false);
  const [found, setFound] = useState<readonly FindingOption[]>([]);
  const take = useCallback((options: readonly FindingOption[]) => setFound(options), []);
  const { open, active, onKey, onTyped } = useOptionKeys(found.length);
  const shown = open && text.trim() !== '' ? found : [];

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
        onFocus={() => setTouched(true)}
        onKeyDown={(event) => onKey(event, shown, (option) => onChoose(option.href))}
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
        options={shown}
        active={active}
        onChoose={(position) => {
          const option = shown[position];
          if (option) onChoose(option.href);
        }}
      />
      <p className="sr-only" role="status">
        {open && text.trim() !== '' ? `${shown.length} suggestions` : ''}
      </p>
      {touched ? (
        <Suspense fallback={null}>
          <FindingOptions text={text} question={question} onFound={take} />
        </Suspense>
      ) : null}
    </>
  );
}
