import type { Role } from '../../shared/domain/can/role';
import type { Db } from '../db';
import { findAccountByName } from '../repositories/account-repository';
import { addAccountWithRole } from './add-account';

export type DemoAccount = { name: string; password: string; role: Role };

/** One account for each role, for trying the demo out. Their passwords are shown to everybody. */
export const DEMO_ACCOUNTS: readonly DemoAccount[] = [
  { name: 'demo-reader', password: 'marrow-lane-reading', role: 'reader' },
  { name: 'demo-contributor', password: 'marrow-lane-posting', role: 'contributor' },
  { name: 'demo-moderator', password: 'marrow-lane-reviewing', role: 'moderator' },
  { name: 'demo-keeper', password: 'marrow-lane-keeping', role: 'keeper' },
];

/** Adds those that are missing. @returns how many were added */
export async function addDemoAccounts(db: Db): Promise<number> {
  let added = 0;
  for (const account of DEMO_ACCOUNTS) {
    if ((await findAccountByName(db, account.name)) !== null) continue;
    await addAccountWithRole(db, account);
    added += 1;
  }
  return added;
}
