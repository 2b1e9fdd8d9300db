'use client';

import Form from 'next/form';
import { useRouter } from 'next/navigation';
import { useEffect, useId, useMemo, useState, useTransition, type KeyboardEvent } from 'react';
import { withAside, withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { findingOptions, type FindingOption, type VocabularyEntry } from '../../_address/vocabulary-entry';
import { Counting } from '../../_components/counting';
import { HiddenQuestion } from './hidden-question';
import { matchOptions } from './match-options';

type AddFindingProps = {
  question: Question;
  entries: VocabularyEntry[];
  label: string;
  /** The stretch of the words that the chosen finding stands for; it is then set aside. */
  standsFor?: string;
};

/**
 * Adds a finding from the vocabulary with type-ahead. Without scripts it is a plain form over the page's
 * datalist, and whatever is written there joins the words.
 */
export function AddFinding({ question, entries, label, standsFor }: AddFindingProps) {
  const id = useId();
  const router = useRouter();
  const [running, setRunning] = useState(false);
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const [pending, start] = useTransition();
  useEffect(() => setRunning(true), []);

  const options = useMemo(() => findingOptions(entries), [entries]);
  const shown = useMemo(() => (open ? matchOptions(options, text) : []), [open, options, text]);

  const choose = (option: FindingOption) => {
    const base = standsFor === undefined ? question : withAside(question, standsFor);
    setText('');
    setOpen(false);
    setActive(-1);
    start(() => router.push(questionHref('/', withFinding(base, option.finding)), { scroll: false }));
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setOpen(true);
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setActive((now) => Math.max(-1, Math.min(shown.length - 1, now + step)));
    } else if (event.key === 'Enter' && shown[active]) {
      event.preventDefault();
      choose(shown[active]);
    } else if (event.key === 'Escape') {
      setOpen(false);
      setActive(-1);
    }
  };

  const combobox = running
    ? {
        role: 'combobox',
        'aria-expanded': shown.length > 0,
        'aria-controls': `${id}-list`,
        'aria-autocomplete': 'list' as const,
        'aria-activedescendant': shown[active] ? `${id}-${active}` : undefined,
        onKeyDown,
      }
    : { list: 'vocabulary' };

  return (
    <Form action="/" className="add-form" scroll={false}>
      <Counting shown={pending} />
      <label htmlFor={`${id}-box`}>{label}</label>
      <input
        id={`${id}-box`}
        type="text"
        name="also"
        autoComplete="off"
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setOpen(true);
          setActive(-1);
        }}
        {...combobox}
      />
      <button type="submit" className="press">
        Add
      </button>
      <HiddenQuestion question={standsFor === undefined ? question : withAside(question, standsFor)} leaveOut={['why']} />
      <Suggestions id={id} options={shown} active={active} onChoose={choose} />
      <p className="sr-only" role="status">
        {open && text.trim() !== '' ? `${shown.length} suggestions` : ''}
      </p>
    </Form>
  );
}

type SuggestionsProps = { id: string; options: FindingOption[]; active: number; onChoose: (option: FindingOption) => void };

function Suggestions({ id, options, active, onChoose }: SuggestionsProps) {
  useEffect(() => {
    document.getElementById(`${id}-${active}`)?.scrollIntoView({ block: 'nearest' });
  }, [id, active]);
  if (options.length === 0) return null;
  return (
    <div className="suggestions" id={`${id}-list`} role="listbox" aria-label="Suggestions">
      {options.map((option, index) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are handled at the box, which keeps the focus
        // biome-ignore lint/a11y/useFocusableInteractive: the focus stays at the box
        <div
          key={option.label}
          id={`${id}-${index}`}
          role="option"
          aria-selected={index === active}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onChoose(option)}
        >
          {option.label}
        </div>
      ))}
    </div>
  );
}
