import { readFileSync } from 'node:fs';
import { Command, InvalidArgumentError, Option } from 'commander';
import { z } from 'zod';
import { listDestroyedKeys } from '../../repositories/log-key-repository';
import { type LogRow, streamLog } from '../../repositories/log-repository';
import { replayCuts } from '../../services/log/replay-cuts';
import { type Checkpoint, verifyLog } from '../../services/log/verify-log';
import { CommandError, type CommandIo } from '../io';

/** `log`: the log of decisions, from the machine that the site runs on. */
export function logCommand(io: CommandIo): Command {
  const command = new Command('log').description('the log of decisions: verify, export, keep and replay cuts');
  for (const create of [verifyCommand, exportCommand, cutsCommand, replayCommand]) command.addCommand(create(io));
  return command;
}

type VerifyOptions = { checkpoint: Checkpoint[]; file?: string };

function verifyCommand(io: CommandIo): Command {
  const noted = new Option(
    '--checkpoint <number:hash>',
    'an entry noted down earlier that must be there; may be given several times',
  );
  return new Command('verify')
    .description('follow the chain of hashes; exit code 1 and the first entry that breaks where it was tampered with')
    .addOption(noted.argParser(readCheckpoint).default([], 'none'))
    .option('--file <path>', 'verify an exported file instead of the database')
    .addHelpText(
      'after',
      '\nThe chain alone cannot show that its newest entries were taken off: keep the checkpoint that this prints elsewhere.',
    )
    .action(async ({ checkpoint, file }: VerifyOptions) => {
      const result = await verifyLog(file === undefined ? streamLog(io.db()) : readExport(file), checkpoint);
      if (!result.intact) throw new CommandError(`The log breaks at entry ${result.seq}: ${result.fault}.`);
      if (result.head === null) io.out('The log is empty.\n');
      else io.out(`The log is intact: ${result.entries} entries.\nCheckpoint: ${result.head.seq}:${result.head.hash}\n`);
    });
}

function exportCommand(io: CommandIo): Command {
  return new Command('export')
    .description('write the log to standard output, one JSON entry per line; "verify --file" reads it')
    .action(async () => {
      for await (const entry of streamLog(io.db())) io.out(`${JSON.stringify(entry)}\n`);
    });
}

function cutsCommand(io: CommandIo): Command {
  return new Command('cuts')
    .description('print the ids of destroyed keys, one per line: keep them apart from the backups, for "replay-cuts"')
    .action(async () => {
      for (const id of await listDestroyedKeys(io.db())) io.out(`${id}\n`);
    });
}

function replayCommand(io: CommandIo): Command {
  return new Command('replay-cuts')
    .description('after a backup was restored: cut and delete again what "cuts" listed')
    .argument('<file>', 'what "cuts" has printed')
    .action(async (file: string) => {
      const ids = linesOf(file);
      if (ids.some((id) => !/^[0-9a-f]{32}$/.test(id)))
        throw new CommandError(`${file} is not a list that "log cuts" has printed.`);
      const { links, accounts } = await replayCuts(io.db(), ids);
      io.out(`Cut again: ${links} links. Deleted again: ${accounts} accounts.\n`);
    });
}

function readCheckpoint(text: string, before: Checkpoint[]): Checkpoint[] {
  const [, seq, hash] = /^([1-9]\d{0,14}):([0-9a-f]{64})$/.exec(text) ?? [];
  if (hash === undefined) throw new InvalidArgumentError('Write the number and the hash of an entry as "verify" prints them.');
  return [...before, { seq: Number(seq), hash }];
}

const rowSchema = z.strictObject({
  seq: z.int(),
  month: z.string(),
  time: z.string().nullable(),
  kind: z.string(),
  subjectKind: z.string(),
  subject: z.string(),
  actor: z.string().nullable(),
  detail: z.string(),
  prevHash: z.string(),
  hash: z.string(),
}) satisfies z.ZodType<LogRow>;

function* readExport(path: string): Generator<LogRow> {
  for (const [index, line] of linesOf(path).entries()) {
    const row = rowSchema.safeParse(parsed(line));
    if (!row.success) throw new CommandError(`Line ${index + 1} of ${path} is not an entry of the log.`);
    yield row.data;
  }
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

function linesOf(path: string): string[] {
  try {
    return readFileSync(path, 'utf8').split('\n').filter(Boolean);
  } catch {
    throw new CommandError(`${path} cannot be read.`);
  }
}
