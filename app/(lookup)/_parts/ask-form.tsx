'use client';

import Form from 'next/form';
import Link from 'next/link';
import { type ChangeEvent, type ReactNode, useEffect, useRef } from 'react';
import { useFormStatus } from 'react-dom';
import type { Question } from '../../_address/question';
import { Counting } from '../../_components/counting';
import type { DeviceGroup } from '../../_components/device-choice';
import { DeviceOptions } from '../../_components/device-options';

function FormCounting() {
  return <Counting shown={useFormStatus().pending} />;
}

type AskFormProps = {
  /** What the form's fields show. */
  question: Pick<Question, 'text' | 'device' | 'complete'>;
  /** Whether anything was asked yet. */
  asked: boolean;
  groups: DeviceGroup[];
  /** Longest question, in characters. */
  longest: number;
  /** What else of the question the form sends along, as hidden fields. */
  children: ReactNode;
};

/** The one box. A plain GET form; where scripts run it answers without loading the page anew. */
export function AskForm({ question, asked, groups, longest, children }: AskFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const words = useRef<HTMLInputElement>(null);
  const device = useRef<HTMLSelectElement>(null);
  const all = useRef<HTMLInputElement>(null);

  const shown = useRef(question);

  // The address can change under the form (a tag, the back button): its fields then follow the address. Never before that:
  // what somebody typed while the scripts were still loading stays.
  useEffect(() => {
    const before = shown.current;
    shown.current = question;
    if (before.text === question.text && before.device === question.device && before.complete === question.complete) return;
    if (words.current) words.current.value = question.text;
    if (device.current) device.current.value = question.device ?? '';
    if (all.current) all.current.checked = question.complete;
  }, [question]);

  const sendAtOnce = (_: ChangeEvent<HTMLInputElement>) => {
    if (asked) form.current?.requestSubmit();
  };

  return (
    <Form action="/" className="ask" ref={form} scroll={false} role="search">
      <FormCounting />
      <div className="ask-field ask-words">
        <label htmlFor="words">What you see, and what you checked</label>
        <input
          id="words"
          ref={words}
          type="text"
          name="q"
          defaultValue={question.text}
          maxLength={longest}
          autoComplete="off"
          autoCapitalize="none"
          enterKeyHint="search"
          placeholder="grey screen, clock present"
        />
      </div>
      <div className="ask-field">
        <label htmlFor="device">Device, if known</label>
        <select id="device" ref={device} name="on" defaultValue={question.device ?? ''}>
          <option value="">Any device</option>
          <DeviceOptions groups={groups} />
        </select>
      </div>
      <button type="submit" className="press press-main">
        Look up
      </button>
      <div className="ask-foot">
        <label className="tick">
          <input ref={all} type="checkbox" name="all" value="1" defaultChecked={question.complete} onChange={sendAtOnce} />
          <span>
            That is all I see <span className="soft">(what I did not mention is absent)</span>
          </span>
        </label>
        {asked ? (
          <Link href="/" prefetch={false}>
            Start over
          </Link>
        ) : null}
      </div>
      {children}
    </Form>
  );
}
