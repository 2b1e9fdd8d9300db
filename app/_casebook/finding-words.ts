import type { CauseShare, NamedShare } from '../../shared/schemas/counted-share';
import type { CaseView } from '../../shared/schemas/case-view';
import type { DeviceView } from '../../shared/schemas/device-view';
import type { FixView } from '../../shared/schemas/fix-view';
import type { PartView } from '../../shared/schemas/part-view';
import type { SymptomView } from '../../shared/schemas/symptom-view';
import {
  formatCount,
  formatCounted,
  formatMonth,
  formatPercent,
  formatPercentRange,
} from '../_components/format-figures';
import { capital, inSentence, joinWords } from '../_components/words';

/** `38% video RAM dead`: the commonest of the causes; empty where there is none. */
function leadingWords(causes: readonly CauseShare[]): string {
  const [first] = causes;
  return first ? `${formatPercent(first.count / first.of)} ${inSentence(first.label)}` : '';
}

const joined = (parts: readonly string[]) => parts.filter((part) => part !== '').join(', ');

/** `Grey screen on Quellbrook 8: 38% video RAM dead, 61 cases`. */
export function symptomTitle(view: SymptomView): string {
  const where = view.device ? `${view.label} on ${view.device.label}` : view.label;
  if (view.share.count === 0) return `${where}: no case yet`;
  return `${where}: ${joined([leadingWords(view.causes), formatCounted(view.share.count, 'case')])}`;
}

/** `Quellbrook 8: 12% crystal stopped, 840 cases`. */
export function deviceTitle(view: DeviceView): string {
  if (view.cases === 0) return `${view.label}: no case yet`;
  return `${view.label}: ${joined([leadingWords(view.causes), formatCounted(view.cases, 'case')])}`;
}

/** `Video RAM: the cause in 9% of 4,200 cases`. */
export function partTitle({ label, share }: PartView): string {
  if (share.of === 0) return `${capital(label)}: no case yet`;
  return `${capital(label)}: the cause in ${formatPercent(share.count / share.of)} of ${formatCounted(share.of, 'case')}`;
}

/** `Replace the video RAM: cured 45 of 80 tries`. */
export function fixTitle({ label, record }: FixView): string {
  if (record.tried === 0) return `${label}: not tried yet`;
  return `${label}: cured ${formatCount(record.resolved)} of ${formatCounted(record.tried, 'try', 'tries')}`;
}

/** `Grey screen: crystal stopped, Quellbrook 8, March 2024`. */
export function caseTitle(found: CaseView): string {
  const present = found.symptoms.filter((symptom) => symptom.present).map((symptom) => inSentence(symptom.label));
  const causes = found.causes.map((cause) => inSentence(cause.label));
  const what = present.length > 0 ? capital(joinWords(present)) : 'No symptom recorded';
  const cause = causes.length > 0 ? joinWords(causes) : 'cause not found';
  return `${what}: ${cause}, ${found.device.label}, ${formatMonth(found.month)}`;
}

/** The two commonest of some causes in a sentence, for whoever does not see the bars. */
export function causesSummary(causes: readonly CauseShare[], causeNotFound: number): string {
  const told = (share: NamedShare) =>
    `${inSentence(share.label)} (${formatPercent(share.count / share.of)}, ${formatPercentRange(share.low, share.high)})`;
  const [first, second] = causes;
  if (!first) return 'No cause was found yet.';
  const next = second ? `, then ${told(second)}` : '';
  const open = causeNotFound > 0 ? ` In ${formatCounted(causeNotFound, 'case')} it was not found.` : '';
  return `Most often ${told(first)}${next}, of ${formatCounted(first.of, 'case')}.${open}`;
}

/** What cured most surely, in a sentence. */
export function fixesSummary(fixes: SymptomView['fixes']): string {
  const [best] = fixes;
  if (!best || best.tried === 0) return 'No fix was tried on such a unit yet.';
  return `Surest: ${inSentence(best.label)}, which cured ${formatCount(best.resolved)} of ${formatCounted(best.tried, 'try', 'tries')} (${formatPercentRange(best.low, best.high)}). Larger squares were tried more often.`;
}
