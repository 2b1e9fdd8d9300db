'use client';

import { useRouter } from 'next/navigation';
import { lazy, Suspense, useCallback, useState } from 'react';
import { SuggestionList } from './suggestion-list';
import { useOptionKeys } from './use-option-keys';

export type SearchOption = { key: string; label: string; meaning: string; href: string };

/** The part that asks the server comes only when somebody turns to the box: most visits never need it. */
const SearchOptions = lazy(async () => ({ default: (await import('./search-options')).SearchOptions }));

const ID = 'site-search';

/**
 * The one search box, on every page: a plain form that leads to the page of results. Where scripts run it offers pages
 * while somebody types. The box is never taken over: what was typed before the scripts had loaded stays.
 */
export function SiteSearch() {
  const router = useRouter();
  const [text, setText] = useState('');
  const [touched, setTouched] = useState(false);
  const [options, setOptions] = useState<readonly SearchOption[]>([]);
  const take = useCallback((found: readonly SearchOption[]) => setOptions(found), []);
  const { open, setOpen, active, onKey, onTyped } = useOptionKeys(options.length);
  const shown = open && text.trim() !== '' ? options : [];

  const go = (option: SearchOption | undefined) => {
    if (!option) return;
    setOpen(false);
    router.push(option.href);
  };

  return (
    <search className="site-search no-print">
      <form action="/search" method="get" aria-label="Search the casebook">
        <label htmlFor={`${ID}-box`} className="sr-only">
          Search symptoms, devices, parts, fixes and cases
        </label>
        <input
          id={`${ID}-box`}
          type="search"
          name="q"
          maxLength={200}
          placeholder="Search the casebook"
          autoComplete="off"
          autoCapitalize="none"
          enterKeyHint="search"
          role="combobox"
          aria-expanded={shown.length > 0}
          aria-controls={`${ID}-list`}
          aria-autocomplete="list"
          aria-activedescendant={shown[active] ? `${ID}-${active}` : undefined}
          onFocus={() => setTouched(true)}
          onBlur={() => setOpen(false)}
          onKeyDown={(event) => onKey(event, shown, go)}
          onChange={(event) => {
            setText(event.target.value);
            onTyped();
          }}
        />
        <button type="submit" className="press">
          Search
        </button>
        <SuggestionList
          id={ID}
          label="Pages"
          options={shown}
          active={active}
          onChoose={(position) => go(shown[position])}
        />
        <p className="sr-only" role="status">
          {open && text.trim() !== '' ? `${shown.length} pages` : ''}
        </p>
      </form>
      {touched ? (
        <Suspense fallback={null}>
          <SearchOptions text={text} onFound={take} />
        </Suspense>
      ) : null}
    </search>
  );
}
