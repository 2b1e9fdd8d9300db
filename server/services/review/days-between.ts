const DAY = 86_400_000;

/** Whole days between two moments. */
export const daysBetween = (from: Date, to: Date): number => Math.max(0, Math.floor((to.getTime() - from.getTime()) / DAY));
