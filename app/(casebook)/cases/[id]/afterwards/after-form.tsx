'use client';

import { AccountForm, type Field } from '../../../../(account)/_parts/account-form';
import type { FormState } from '../../../../_trpc/form-state';

type AfterFormProps = {
  action: (before: FormState, data: FormData) => Promise<FormState>;
  caseId: string;
  signedIn: boolean;
};

const REPORT: Field[] = [
  {
    name: 'kind',
    label: 'What became of the repair?',
    type: 'choice',
    autoComplete: 'off',
    choices: [
      { value: 'held', label: 'It held' },
      { value: 'came-back', label: 'The fault came back' },
    ],
  },
  { name: 'months', label: 'Months from the repair', type: 'number', autoComplete: 'off', hint: 'For how long it held, or after how many it came back.' },
];
const KEY: Field = {
  name: 'key',
  label: 'Key of the case',
  type: 'text',
  autoComplete: 'off',
  hint: 'It was shown once when the case was sent, or its link was cut: 20 letters and digits.',
};

/** The form of a report; with the key of the case where nobody is signed in. */
export function AfterForm({ action, caseId, signedIn }: AfterFormProps) {
  return (
    <AccountForm
      action={action}
      fields={signedIn ? REPORT : [...REPORT, KEY]}
      submit="Send the report"
      hidden={{ caseId }}
      whenDone={({ typed }) => (
        <div role="status">
          <p>Thank you. A moderator looks at it; then the figures follow.</p>
          {typed.nextKey ? (
            <>
              <p>The key is used up. This is the next one, shown this once, should there be more to say:</p>
              <p className="figure once-shown">{typed.nextKey}</p>
            </>
          ) : null}
        </div>
      )}
    />
  );
}
