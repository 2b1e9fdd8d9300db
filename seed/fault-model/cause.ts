import type { CauseDescription } from '../engine/fault-model';

export type Causes = Readonly<Record<string, CauseDescription>>;

type Ways = CauseDescription['ways'];

/** One cause: rate, P(comes and goes), what always holds, ways of failing. Without ways there is a single one. */
export function cause(rate: number, intermittent: number, always: string, ways: Ways = [[1, '']]): CauseDescription {
  return { rate, intermittent, always, ways };
}

/**
 * What is on the screen while the program does not run: it hangs on what the video side finds in its memory at power-up.
 * Returns one way per screen with the share given.
 */
export function screens(shares: Readonly<Record<string, number>>, shows = ''): Ways {
  return Object.entries(shares).map(([screen, share]) => [share, `${screen} ${shows}`] as const);
}
