import type { Hazard } from '../../schemas/terms';

/**
 * What comes before first power, whatever the ranking says: the supply measured apart from the unit, and the rails
 * tested for a short. In the order in which they are done.
 */
export const SAFE_POWER_UP: readonly string[] = ['supply-apart', 'rails-short-test'];

/** Whether a check belongs to safe power-up. */
export function isSafePowerUp(check: { slug: string }): boolean {
  return SAFE_POWER_UP.includes(check.slug);
}

/**
 * Mains-side or high-voltage work inside the case: never first while a safer step is open. Outside the case
 * (stage 0) a mains lead is only swapped, which is no such work.
 */
export function isHazardous(step: { stage: number; cautions: readonly Hazard[] }): boolean {
  return step.stage > 0 && step.cautions.some((hazard) => hazard === 'mains' || hazard === 'high-voltage');
}
