'use client';

import { ROLES, type Role } from '../../../shared/domain/can/role';
import { endSessions, makeResetLink, setRole } from '../_actions/keep-accounts';
import { AccountForm } from './account-form';

type AccountRowProps = {
  account: { id: string; name: string; role: Role };
  /** The first month of the account, in words. */
  since: string;
  /** Whether it is the account that looks at the page: nobody changes a role of their own. */
  isOwn: boolean;
};

/** One account, and what a keeper can do with it. */
export function AccountRow({ account: { id, name, role }, since, isOwn }: AccountRowProps) {
  const about = <span className="sr-only"> of {name}</span>;
  return (
    <li>
      <p>
        <strong>{name}</strong> <span className="soft">{role}, since {since}{isOwn ? '; this is you' : ''}</span>
      </p>
      <div className="account-keys">
        {isOwn ? null : (
          <AccountForm key={role} action={setRole} fields={[]} submit="Set the role" hidden={{ accountId: id }} isQuiet>
            <label>
              Role{about}{' '}
              <select name="role" defaultValue={role}>
                {ROLES.map((choice) => (
                  <option key={choice}>{choice}</option>
                ))}
              </select>
            </label>
          </AccountForm>
        )}
        <AccountForm
          action={endSessions}
          fields={[]}
          submit="End its sessions"
          hidden={{ accountId: id }}
          doneText={`${name} is signed out everywhere.`}
          isQuiet
        />
        <AccountForm
          action={makeResetLink}
          fields={[]}
          submit="Make a link for a new password"
          hidden={{ accountId: id }}
          isQuiet
          whenDone={({ typed }) => (
            <div role="status">
              <p>Hand this to {name} only. It works once, for 24 hours, and is shown this once:</p>
              <p className="figure once-shown">{typed.link}</p>
            </div>
          )}
        />
      </div>
    </li>
  );
}
