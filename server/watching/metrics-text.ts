import { createHash, timingSafeEqual } from 'node:crypto';
import { type Actor, can } from '../../shared/domain/can/can';
import { casebookState } from '../casebook/current-casebook';
import type { Db } from '../db';
import { getEnv } from '../env';
import { findNewestChange } from '../repositories/case-change-repository';
import { getMetrics } from './metrics';

type Asker = { actor: Actor | null; authorization: string | null };

/** The metrics in the OpenMetrics text format; null for whoever may not read them. */
export async function metricsText(db: Db, asker: Asker): Promise<{ body: string; contentType: string } | null> {
  if (!can(asker.actor, 'site.watch') && !holdsToken(asker.authorization, getEnv().metricsToken)) return null;
  const { registry, cases, lag } = getMetrics();
  const state = casebookState();
  if (state.kind === 'loaded') {
    cases.set(state.cases);
    lag.set((await findNewestChange(db)) - state.changeSeq);
  }
  return { body: await registry.metrics(), contentType: registry.contentType };
}

/** Compares digests, which have one length, in a time that does not tell how far they agree. */
function holdsToken(authorization: string | null, token: string | null): boolean {
  if (token === null || authorization === null) return false;
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(authorization), digest(`Bearer ${token}`));
}
