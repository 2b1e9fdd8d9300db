'use client';

import { type KeyboardEvent, useDeferredValue, useState } from 'react';
import { suggestEntries } from '../../../../shared/domain/casebook/suggest-entries';
import type { EntryBody } from '../../../../shared/schemas/bench';
import type { Suggestion } from '../../../../shared/schemas/case-view';
import type { Finding } from '../../../../shared/schemas/finding';
import { SuggestionList } from '../../../_components/suggestion-list';
import { CheckResult } from './check-result';
import { FixResult } from './fix-result';
import { useUnit } from './unit-context';
import type { ReadText } from './worker-messages';

const OFFERED = 6;
/** What begins with this is a note. */
const NOTE = /^note:\s*/iu;
const KINDS = ['symptom', 'check', 'fix'] as const;

type LogBoxProps = { read: (text: string) => Promise<ReadText> };

/** The one box of the log: a symptom, a check, a fix from the vocabulary, words to be read, or a note. */
export function LogBox({ read }: LogBoxProps) {
  const { words, add, say, partsOf } = useUnit();
  const [text, setText] = useState('');
  const [active, setActive] = useState(-1);
  const [chosen, setChosen] = useState<Suggestion | null>(null);
  const typed = useDeferredValue(text.trim().slice(0, 200));
  const enter = (bodies: EntryBody[], told: string) => {
    add(bodies);
    say(told);
    setChosen(null);
    document.getElementById('log-box')?.focus();
  };
  const readOut = async () => {
    const whole = text.trim();
    const { findings, unread } = await read(whole);
    const notes: EntryBody[] = unread.length > 0 || findings.length === 0 ? [{ kind: 'note', text: findings.length === 0 ? whole : unread.join(', ') }] : [];
    enter([...findings.map(bodyOf), ...notes], findings.length === 0 ? 'Kept as a note.' : `${findings.length} found in the words.`);
  };
  const found = suggestEntries(words, { text: typed, kinds: KINDS, limit: OFFERED });
  const options = [
    ...found.map((entry) => ({
      key: `${entry.kind}.${entry.id}`,
      label: `${entry.label} (${entry.kind})`,
      meaning: entry.meaning,
      take: () => take(entry),
    })),
    { key: 'read', label: `Read “${typed}”`, meaning: 'Finds the symptoms, checks and fixes in it; the rest becomes a note.', take: () => void readOut() },
    { key: 'note', label: `Note “${typed}”`, meaning: 'Kept as it is.', take: () => enter([{ kind: 'note', text: text.trim().replace(NOTE, '') }], 'Kept as a note.') },
  ];
  const take = (entry: Suggestion) => {
    if (entry.kind === 'symptom') enter([{ kind: 'symptom', symptom: entry.id, present: true }], `${entry.label} is entered, present.`);
    else setChosen(entry);
  };
  const shown = typed === '' ? [] : options;
  // A note says so; several words are a sentence to be read; a few are the first that the list offers.
  const isSentence = found.length === 0 || /[,;.]/u.test(typed) || typed.split(/\s+/u).length > 4;
  const usual = NOTE.test(typed) ? found.length + 1 : isSentence ? found.length : 0;
  const choose = (position: number) => {
    const option = shown[position];
    setText('');
    setActive(-1);
    option?.take();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setActive((now) => Math.max(-1, Math.min(shown.length - 1, now + (event.key === 'ArrowDown' ? 1 : -1))));
    } else if (event.key === 'Enter' && typed !== '') {
      event.preventDefault();
      choose(active >= 0 ? active : usual);
    } else if (event.key === 'Escape') {
      setText('');
      setActive(-1);
    }
  };
  const check = chosen?.kind === 'check' ? words.checks.get(chosen.id) : undefined;
  const fix = chosen?.kind === 'fix' ? words.fixes.get(chosen.id) : undefined;
  return (
    <div className="log-box">
      <label htmlFor="log-box">What you see, checked or did</label>
      <input
        id="log-box"
        type="text"
        autoComplete="off"
        autoCapitalize="none"
        enterKeyHint="done"
        maxLength={2000}
        placeholder="grey screen, clock present"
        value={text}
        role="combobox"
        aria-expanded={shown.length > 0}
        aria-controls="log-box-list"
        aria-autocomplete="list"
        aria-activedescendant={shown[active] ? `log-box-${active}` : undefined}
        onKeyDown={onKeyDown}
        onChange={(event) => {
          setText(event.target.value);
          setActive(-1);
          setChosen(null);
        }}
      />
      <SuggestionList id="log-box" label="What it can be" options={shown} active={active} onChoose={choose} />
      {check ? (
        <section aria-label={check.label}>
          <h3>{check.label}: it showed</h3>
          <CheckResult
            check={check}
            onShown={(outcome, reading) =>
              enter([{ kind: 'check', check: check.slug, outcome, designator: '', reading }], `${check.label} is entered.`)
            }
          />
        </section>
      ) : null}
      {fix ? (
        <section aria-label={fix.label}>
          <h3>{fix.label}: the result</h3>
          <FixResult
            label={fix.label}
            parts={partsOf(fix.role)}
            onDone={(result, designator) =>
              enter([{ kind: 'fix', fixes: [{ fix: fix.slug, designator }], result }], `${fix.label} is entered.`)
            }
          />
        </section>
      ) : null}
    </div>
  );
}

/** A finding read from words as an entry of the log. */
export function bodyOf(finding: Finding): EntryBody {
  if (finding.kind === 'symptom') return { kind: 'symptom', symptom: finding.id, present: finding.value === 'present' };
  if (finding.kind === 'check') return { kind: 'check', check: finding.id, outcome: finding.value, designator: '', reading: '' };
  return { kind: 'fix', fixes: [{ fix: finding.id, designator: '' }], result: finding.value };
}
