import { Command } from 'commander';
import type { LookUpResult, SimilarCase } from '../../../shared/schemas/look-up';
import { loadCasebook } from '../../casebook/load-casebook';
import { answerQuestion } from '../../services/answer-question';
import { type CommandIo, printJson } from '../io';
import { questionOf } from '../question-of';
import { cell, table } from '../text-table';

type Options = { device?: string; complete?: boolean; json?: boolean };

/** `lookup "<words>"`: likely causes, next checks, fixes and similar cases for what was seen. */
export function lookupCommand(io: CommandIo): Command {
  return new Command('lookup')
    .description('look up what was seen on a unit: likely causes, next checks, fixes that cured, similar cases')
    .argument('<words>', 'what was seen, such as "grey screen, clock present"')
    .option('--device <slug>', 'board revision or model')
    .option('--complete', 'that is all there is to see: a symptom not named is absent')
    .option('--json', 'print one JSON document')
    .action(async (words: string, options: Options) => {
      const { model } = await loadCasebook(io.db());
      const result = await answerQuestion(io.db(), model, questionOf(model, words, options));
      if (options.json) printJson(io, lookupJson(result));
      else io.out(lookupText(result));
    });
}

/** The look-up as the command line prints it: probabilities unrounded, causes likeliest first. */
export function lookupJson(result: LookUpResult) {
  const { read, cases, causes, unlisted, similar, nextChecks, fixes } = result;
  return {
    read: {
      findings: read.findings.map(({ kind, id, label, value, text }) => ({ kind, id, label, value, text })),
      unread: read.unread.map((span) => span.text),
      ambiguous: read.ambiguous.map(({ text, choices }) => ({
        text,
        choices: choices.map(({ kind, id, label, value }) => ({ kind, id, label, value })),
      })),
      device: read.device?.slug ?? null,
      complete: read.complete,
    },
    cases: { total: cases.total, matching: cases.matching, compatible: cases.compatible },
    causes: causes.map(({ id, label, probability, low, high, matching }) => ({ id, label, probability, low, high, matching })),
    unlisted: { probability: unlisted.probability },
    similar: similar.map(similarJson),
    nextChecks: nextChecks.map(({ id, label, stage, minutes, bits, bitsPerMinute, outcomes }) => ({
      id,
      label,
      stage,
      minutes,
      bits,
      bitsPerMinute,
      outcomes: outcomes.map(({ value, probability }) => ({ value, probability })),
    })),
    nextChecksNote: result.nextChecksNote,
    fixes: fixes.map(({ id, label, tried, resolved, low, high }) => ({ id, label, tried, resolved, low, high })),
    warnings: result.warnings,
  };
}

/** `cause` is the first cause named, null where none was found; `causes` has them all. */
function similarJson({ id, score, shared, contradicting, cause }: SimilarCase) {
  return {
    id,
    score,
    shared: shared.map(({ finding }) => finding),
    contradicting: contradicting.map(({ finding, there }) => ({ ...finding, there })),
    cause: cause[0]?.id ?? null,
    causes: cause.map((c) => c.id),
  };
}

const SHOWN = 8;

function lookupText(result: LookUpResult): string {
  const { read, cases, causes, unlisted, nextChecks, fixes, similar, warnings } = result;
  const unread = read.unread.map((span) => `"${span.text}"`).join(', ');
  const parts = [
    read.findings.length > 0
      ? table(
          'Read as',
          read.findings.map((f) => [f.label, f.value, f.text === '' ? '' : `"${f.text}"`]),
        )
      : 'Nothing in these words is in the vocabulary.\n',
    unread === '' ? '' : `Not read: ${unread}\n`,
    ...read.hidden.map(({ label, by }) => `Not counted apart: ${label} goes with ${by.label} on any unit.\n`),
    read.device ? `Device: ${read.device.label}\n` : '',
    warnings.length > 0 ? `Mind: ${warnings.join(', ')}\n` : '',
    `Cases: ${cases.matching} of ${cases.total} carry all of this, ${cases.compatible} contradict none of it.\n`,
    table('Likely causes (probability, 90 in 100 interval, matching cases)', [
      ...causes.slice(0, SHOWN).map((c) => [c.label, cell(c.probability), `${cell(c.low)} to ${cell(c.high)}`, `${c.matching}`]),
      ['A cause on no record here', cell(unlisted.probability), `${cell(unlisted.low)} to ${cell(unlisted.high)}`, ''],
    ]),
    table(
      'Next checks (stage, minutes, bits per minute)',
      nextChecks.slice(0, SHOWN).map((c) => [c.label, `${c.stage}`, cell(c.minutes), cell(c.bitsPerMinute)]),
    ),
    result.nextChecksNote === null ? '' : `${result.nextChecksNote}\n`,
    table(
      'Fixes tried on such units (cured of tried, interval)',
      fixes.slice(0, SHOWN).map((f) => [f.label, `${f.resolved} of ${f.tried}`, `${cell(f.low)} to ${cell(f.high)}`]),
    ),
    table(
      'Similar cases',
      similar.map((s) => [s.id, s.device.label, s.cause.map((c) => c.label).join(' + ') || 'cause not found', s.outcome]),
    ),
    'Cases are volunteered, not sampled.\n',
  ];
  return parts.filter((part) => part !== '').join('\n');
}
