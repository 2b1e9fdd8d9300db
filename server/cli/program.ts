import { Command, CommanderError } from 'commander';
import { isAppError } from '../../shared/errors';
import { backupCommand } from './commands/backup-command';
import { evaluateCommand } from './commands/evaluate-command';
import { evaluateSearchCommand } from './commands/evaluate-search-command';
import { exportCommand } from './commands/export-command';
import { fitCommand } from './commands/fit-command';
import { importCommand } from './commands/import-command';
import { logCommand } from './commands/log-command';
import { lookupCommand } from './commands/lookup-command';
import { planCommand } from './commands/plan-command';
import { reindexCommand } from './commands/reindex-command';
import { restoreCommand } from './commands/restore-command';
import { searchCommand } from './commands/search-command';
import { snapshotCommand } from './commands/snapshot-command';
import { rescanCommand } from './commands/rescan-command';
import { userCommand } from './commands/user-command';
import { operatorWords } from '../storage/operator-words';
import { CommandError, type CommandIo, EXIT } from './io';

const HELP = `
Run it as: npm run --silent cli -- <command>
Exit code: 0 done, 1 refused or failed, 2 typed wrong. Errors go to standard error.`;

/** The whole command line over the given world. */
export function createProgram(io: CommandIo): Command {
  const program = new Command('cli').description('The casebook from the command line.').addHelpText('after', HELP);
  const commands = [
    lookupCommand,
    planCommand,
    searchCommand,
    reindexCommand,
    importCommand,
    exportCommand,
    evaluateCommand,
    evaluateSearchCommand,
    fitCommand,
    snapshotCommand,
    rescanCommand,
    logCommand,
    userCommand,
    backupCommand,
    restoreCommand,
  ];
  for (const create of commands) program.addCommand(create(io));
  for (const command of [program, ...program.commands, ...program.commands.flatMap((group) => group.commands)]) {
    command.exitOverride().configureOutput({ writeOut: io.out, writeErr: io.err });
  }
  return program;
}

/** Runs one command and returns its exit code. `args` are what stands behind the program's name. */
export async function runProgram(io: CommandIo, args: readonly string[]): Promise<number> {
  try {
    await createProgram(io).parseAsync([...args], { from: 'user' });
    return EXIT.ok;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.usage;
    if (error instanceof CommandError) {
      io.err(`${error.message}\n`);
      return error.kind === 'usage' ? EXIT.usage : EXIT.refused;
    }
    if (isAppError(error)) {
      io.err(`${error.message}\n`);
      return EXIT.refused;
    }
    if (isOutdatedDatabase(error)) {
      io.err('The database lacks tables or columns that this version needs. Run "npm run migrate" first.\n');
      return EXIT.refused;
    }
    const aboutDisk = operatorWords(error);
    if (aboutDisk !== null) {
      io.err(`${aboutDisk}\n`);
      return EXIT.refused;
    }
    io.err(`Something failed that should not. ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return EXIT.refused;
  }
}

/** Prisma's codes for a table (P2021) or a column (P2022) that is not there. */
function isOutdatedDatabase(error: unknown): boolean {
  return error instanceof Error && 'code' in error && (error.code === 'P2021' || error.code === 'P2022');
}
