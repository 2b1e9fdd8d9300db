'use client';

import { useState } from 'react';
import type { SyncState } from './use-sync';

const WORDS: Record<SyncState, string> = {
  'here-only': 'Kept in this browser.',
  waiting: 'Kept in this browser; being sent to your account.',
  synced: 'Kept in this browser and in your account.',
  offline: 'No network: everything is kept in this browser, and sent when it returns.',
  'signed-out': 'Kept in this browser alone. Sign in, and your other browsers have it too.',
  'other-account': 'The logs in this browser belong to another account, so they are not sent to yours.',
  full: 'Your account has no room for more bench logs. Remove some that are done; everything is kept in this browser.',
};

type SyncLineProps = { state: SyncState; unsent: number; onClear: () => Promise<void> };

/** How the logs are kept, in one line, and how to take them off this browser. */
export function SyncLine({ state, unsent, onClear }: SyncLineProps) {
  const [sure, setSure] = useState(false);
  return (
    <div className="sync-line no-print">
      <p role="status" data-sync={state}>
        {WORDS[state]}
        {state === 'offline' && unsent > 0 ? ` ${unsent} not sent yet.` : ''} Nobody else can read them.
      </p>
      <details>
        <summary>Others use this browser?</summary>
        <p className="soft small">Takes every bench log off this browser. What was sent to your account stays there.</p>
        <p className="bench-keys">
          {sure ? (
            <button
              type="button"
              className="press press-small"
              onClick={() => {
                setSure(false);
                void onClear();
              }}
            >
              Yes, remove them{unsent > 0 ? `; ${unsent} records were never sent` : ''}
            </button>
          ) : (
            <button type="button" className="press press-small" onClick={() => setSure(true)}>
              Remove the logs from this browser
            </button>
          )}
        </p>
      </details>
    </div>
  );
}
