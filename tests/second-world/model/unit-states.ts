import type { Check } from '../../../shared/schemas/vocabulary';
import type { UnitState } from './syndromes';

const lifeless = [
  'absent',
  'none-active',
  'none',
  'stuck',
  'dead',
  'flat',
  'cold',
  'silent',
  'dark',
  'no-response',
  'no-sound',
  'no-movement',
  'not-turning',
  'no-effect',
  'does-not-start',
  'same-fault',
];
const supplyChecks = new Set(['rail-5v', 'rail-12v', 'rail-minus-5v', 'rail-at-chips', 'converter-output', 'b-plus-voltage']);
const programChecks = new Map<string, number>([
  ['address-lines', 0.62],
  ['data-lines', 0.55],
  ['read-write-line', 0.6],
  ['interrupt-line', 0.5],
  ['rom-select', 0.45],
  ['ram-select', 0.45],
  ['video-select', 0.4],
  ['decoder-outputs', 0.35],
  ['io-port-activity', 0.5],
  ['sound-generator-output', 0.65],
  ['keyboard-scan-lines', 0.6],
  ['buffered-lines', 0.4],
  ['ram-data-outputs', 0.3],
  ['write-enable', 0.35],
  ['cartridge-port-lines', 0.4],
  ['lcd-data-lines', 0.3],
  ['amplifier-input', 0.4],
]); // prettier-ignore
const clockChecks = new Map<string, number>([
  ['clock-at-processor', 0.93],
  ['clock-at-video-generator', 0.8],
  ['clock-generator-output', 0.72],
  ['crystal-oscillation', 0.7],
  ['colour-clock', 0.5],
  ['sync-output', 0.7],
  ['ras-line', 0.75],
  ['cas-line', 0.75],
]); // prettier-ignore

const firstOf = (check: Check, outcomes: readonly string[]): string | null =>
  outcomes.find((slug) => slug !== check.workingOutcome && check.outcomes.some((outcome) => outcome.slug === slug)) ?? null;

function response(check: Check, outcomes: readonly string[], chance: number): { outcome: string; chance: number } | null {
  const outcome = chance > 0 ? firstOf(check, outcomes) : null;
  return outcome ? { outcome, chance } : null;
}

/** What the unit's state alone makes a check show, or null where the state doesn't matter to it. A dead supply hides every powered check. */
export function stateResponse(check: Check, state: UnitState): { outcome: string; chance: number } | null {
  const swap = check.outcomes.some((outcome) => outcome.slug === 'cured');
  const powered = check.stage === 2 && !swap;
  if (state === 'dead') return response(check, lifeless, powered ? 0.94 : 0);
  if (state === 'short') {
    if (supplyChecks.has(check.slug)) return response(check, detailOrder(check), 0.85);
    return response(check, lifeless, powered ? 0.6 : 0);
  }
  if (state === 'low' && supplyChecks.has(check.slug)) return response(check, ['low', 'dropped'], 0.78);
  if (state === 'high')
    return response(
      check,
      ['high', 'hot'],
      check.slug.startsWith('rail-') ? 0.88 : check.slug.endsWith('-temperature') ? 0.5 : 0,
    );
  if (state === 'ripple' && check.slug === 'rail-ripple') return response(check, ['high'], 0.82);
  if (state === 'no-clock')
    return response(check, lifeless, clockChecks.get(check.slug) ?? (programChecks.has(check.slug) ? 0.85 : 0));
  if (state === 'halted') return response(check, [...lifeless, 'some-stuck', 'one-stuck'], programChecks.get(check.slug) ?? 0);
  return null;
}

function detailOrder(check: Check): readonly string[] {
  return check.slug === 'rail-5v' ? ['low', 'absent'] : ['absent', 'low', 'dropped'];
}
