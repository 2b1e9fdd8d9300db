import { LOG_KINDS, type LogKind } from '../../../shared/domain/log/log-kinds';
import type { LogDetail } from '../../../shared/schemas/log';

const LABELS: Record<string, string> = {
  kind: 'kind of entry',
  label: 'entry',
  into: 'into',
  to: 'to',
  from: 'from',
  meaning: 'meaning',
  added: 'added',
  removed: 'removed',
  undone: 'undone',
  reason: 'reason',
  settledAs: 'settled as',
  fields: 'fields',
  reports: 'reports settled',
  waitedDays: 'days waited',
  cases: 'cases',
  revision: 'revision',
};

/** What everybody may read of an entry's detail, by kind: of a case nothing that leads to it. */
const OPEN: readonly string[] = [
  'kind',
  'label',
  'into',
  'to',
  'from',
  'meaning',
  'added',
  'removed',
  'undone',
  'cases',
  'revision',
];
const OPEN_OF_CASE: readonly string[] = ['reason', 'settledAs', 'from', 'to'];

/** What an entry says was done. */
export const saysOf = (kind: string): string => LOG_KINDS[kind as LogKind] ?? kind;

/** An entry's detail in words; `isOpen` leaves out what is for moderators alone. */
export function detailsOf(row: { subjectKind: string; detail: string }, isOpen: boolean): LogDetail[] {
  const detail = JSON.parse(row.detail) as Record<string, unknown>;
  const allowed =
    row.subjectKind === 'word' || row.subjectKind === 'casebook' || row.subjectKind === 'account' ? OPEN : OPEN_OF_CASE;
  return Object.entries(detail).flatMap(([key, value]) => {
    if (isOpen && !allowed.includes(key)) return [];
    const text = Array.isArray(value) ? value.join(', ') : String(value ?? '');
    return text === '' ? [] : [{ label: LABELS[key] ?? key, text }];
  });
}
