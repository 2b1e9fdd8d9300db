/** What the log can say was done, in the words of its page, without who did it and to what. */
export const LOG_KINDS = {
  'case-accepted': 'A case was accepted',
  'case-accepted-edited': 'A case was accepted with edits',
  'case-changes-asked': 'Changes to a case were asked for',
  'case-declined': 'A case was declined',
  'case-merged': 'A case was merged into another as a second report',
  'case-retracted': 'A published case was taken back',
  'case-restored': 'A case was restored',
  'case-corrected': 'A published case was corrected',
  'case-reported': 'A published case was reported',
  'report-settled': 'A report about a case was settled',
  'afterwards-accepted': 'A report of how a repair held was accepted',
  'afterwards-declined': 'A report of how a repair held was declined',
  'unit-accepted': 'Readings of a working unit were accepted',
  'unit-declined': 'Readings of a working unit were declined',
  'word-added': 'An entry of the vocabulary was added',
  'word-reworded': 'An entry of the vocabulary was reworded',
  'word-retired': 'An entry of the vocabulary was retired',
  'word-brought-back': 'A retired entry of the vocabulary was brought back',
  'word-change-undone': 'A change of the vocabulary was undone',
  'words-merged': 'Two entries of the vocabulary were merged',
  'merge-undone': 'A merge of two entries was undone',
  'synonym-added': 'A synonym was added',
  'synonym-removed': 'A synonym was removed',
  'cases-imported': 'Cases were imported as accepted, without review',
  'role-changed': 'An account was given another role',
} as const;

export type LogKind = keyof typeof LOG_KINDS;
export const LOG_KIND_LIST = Object.keys(LOG_KINDS) as LogKind[];

/** What an entry can be about; `casebook` is all of it. */
export const LOG_SUBJECT_KINDS = ['case', 'word', 'account', 'report', 'working-unit', 'casebook'] as const;
export type LogSubject = { kind: (typeof LOG_SUBJECT_KINDS)[number]; id: string };

/**
 * Kinds whose exact time is kept, to the second: who may decide changed hands, which matters when an account was
 * misused. Of everything else the month is enough, and the order says what came first.
 */
const TIMED: ReadonlySet<LogKind> = new Set<LogKind>(['role-changed']);

/** Whether entries of this kind keep their exact time. */
export const keepsTime = (kind: LogKind): boolean => TIMED.has(kind);
