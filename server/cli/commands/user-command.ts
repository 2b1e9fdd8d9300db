import { Command, Option } from 'commander';
import type { z } from 'zod';
import { type Role, ROLES } from '../../../shared/domain/can/role';
import { AppError } from '../../../shared/errors';
import { accountNameSchema, signUpSchema } from '../../../shared/schemas/account';
import { addAccountWithRole } from '../../accounts/add-account';
import { makeResetToken } from '../../accounts/reset-link';
import { setRole } from '../../accounts/set-role';
import { getEnv } from '../../env';
import { type AccountSummary, findAccountByName, listAccounts } from '../../repositories/account-repository';
import { CommandError, type CommandIo, printJson } from '../io';
import { table } from '../text-table';

/** `user`: accounts, from the machine that the site runs on. */
export function userCommand(io: CommandIo): Command {
  const command = new Command('user').description('accounts: add, list, give a role, help with a lost password');
  for (const create of [addCommand, listCommand, roleCommand, resetCommand]) command.addCommand(create(io));
  return command;
}

function addCommand(io: CommandIo): Command {
  return new Command('add')
    .description('add an account; its password is asked for, or read from standard input')
    .argument('<name>', 'the name to sign in with')
    .addOption(new Option('--role <role>', 'what it may do').choices(ROLES).default('contributor'))
    .action(async (name: string, { role }: { role: Role }) => {
      const named = accountNameSchema.safeParse(name);
      if (!named.success) throw new CommandError(`The name: ${firstFault(named.error)}`, 'usage');
      const db = io.db();
      const password = await io.readSecret(`Password for ${name}, at least 10 characters: `);
      const account = signUpSchema.safeParse({ name, password });
      if (!account.success) throw new CommandError(`The password: ${firstFault(account.error)}`);
      const outcome = await addAccountWithRole(db, { ...account.data, role });
      if (outcome.status === 'refused') throw new CommandError(Object.values(outcome.fields).join(' '));
      io.out(`Added ${account.data.name}, ${role}.\n`);
    });
}

function listCommand(io: CommandIo): Command {
  return new Command('list')
    .description('list the accounts with their roles')
    .option('--json', 'print one JSON document')
    .action(async ({ json }: { json?: boolean }) => {
      const accounts = (await listAccounts(io.db())).map(({ name, role, createdAt }) => ({
        name,
        role,
        since: createdAt.toISOString(),
      }));
      if (json) printJson(io, accounts);
      else if (accounts.length === 0) io.out('There are no accounts yet. The first keeper: user add <name> --role keeper\n');
      else
        io.out(
          table(
            'Accounts, with their roles and first days:',
            accounts.map((a) => [a.name, a.role, a.since.slice(0, 10)]),
          ),
        );
    });
}

function roleCommand(io: CommandIo): Command {
  return new Command('role')
    .description('give an account a role; one that may do less from now on is signed out')
    .argument('<name>')
    .argument('<role>', ROLES.join(', '))
    .action(async (name: string, role: string) => {
      if (!ROLES.some((known) => known === role)) throw new CommandError(`The role must be one of ${ROLES.join(', ')}.`, 'usage');
      const account = await accountNamed(io, name);
      await setRole(io.db(), account.id, role as Role, { by: null, now: io.now() });
      io.out(`${account.name} is now ${role}.\n`);
    });
}

function resetCommand(io: CommandIo): Command {
  return new Command('reset')
    .description('print a link that sets a new password, once, within 24 hours')
    .argument('<name>')
    .action(async (name: string) => {
      const account = await accountNamed(io, name);
      const token = await makeResetToken(io.db(), account.id, io.now());
      const site = getEnv().siteUrl;
      io.err(
        `Hand this to ${account.name} only; it works once, for 24 hours.${site ? '' : ' Put it behind the address of your site.'}\n`,
      );
      io.out(`${site?.replace(/\/$/, '') ?? ''}/reset/${token}\n`);
    });
}

async function accountNamed(io: CommandIo, name: string): Promise<AccountSummary> {
  const account = await findAccountByName(io.db(), name);
  if (account === null) throw new AppError('account-not-found');
  return account;
}

const firstFault = (error: z.ZodError) => error.issues[0]?.message ?? 'is not as it should be.';
