import { CONCENTRATION_BINS, CONCENTRATION_WARNING, concentrationBin } from '../../../shared/domain/health/concentration';
import { type CountBin, countBins, DAY_BINS, lowerMedian } from '../../../shared/domain/health/count-bins';
import { PROOFS, type Proof } from '../../../shared/schemas/case';
import type { CountedShare } from '../../../shared/schemas/counted-share';
import { jeffreysInterval } from '../../../shared/stats/jeffreys-interval';
import type { Db } from '../../db';
import {
  countDecisions,
  countProofs,
  listDeviceEvidence,
  listWaitedDays,
  listWaitingSince,
} from '../../repositories/health-repository';
import { daysBetween } from '../review/days-between';
import { monthsBefore } from '../words/unread-words';

const MONTHS = 12;

/** How the moderation stands. Times are whole days and months, shares of 0 to 1. */
export type SiteHealth = {
  since: string;
  waiting: { count: number; oldestDays: number | null; bins: CountBin[] };
  decisions: {
    accepted: CountedShare;
    declined: CountedShare;
    changesAsked: CountedShare;
    months: { month: string; count: number }[];
  };
  decided: { count: number; medianDays: number | null; bins: CountBin[] };
  proofs: (CountedShare & { proof: Proof })[];
  devices: { slug: string; name: string; cases: number; bin: number | null; isFrozen: boolean; isHigh: boolean }[];
};

/** Gathers the health of the site over the last twelve months. */
export async function siteHealth(db: Db, now: Date): Promise<SiteHealth> {
  const since = monthsBefore(now.toISOString().slice(0, 7), MONTHS - 1);
  const waits = (await listWaitingSince(db)).map((from) => daysBetween(from, now));
  const waited = await listWaitedDays(db, since);
  return {
    since,
    waiting: {
      count: waits.length,
      oldestDays: waits.length === 0 ? null : Math.max(...waits),
      bins: countBins(waits, DAY_BINS),
    },
    decisions: decisionShares(await countDecisions(db, since), since),
    decided: { count: waited.length, medianDays: lowerMedian(waited), bins: countBins(waited, DAY_BINS) },
    proofs: proofShares(await countProofs(db)),
    devices: (await listDeviceEvidence(db)).map(({ most, frozenBin, ...device }) => {
      const now = concentrationBin(most, device.cases);
      const bin = now === null && frozenBin === null ? null : Math.max(now ?? -1, frozenBin ?? -1);
      const isHigh = bin !== null && (CONCENTRATION_BINS[bin] ?? 0) >= CONCENTRATION_WARNING;
      return { ...device, bin, isFrozen: frozenBin !== null && bin === frozenBin && bin !== now, isHigh };
    }),
  };
}

function decisionShares(rows: Awaited<ReturnType<typeof countDecisions>>, since: string): SiteHealth['decisions'] {
  const of = (event: string) => rows.filter((row) => row.event === event).reduce((sum, { count }) => sum + count, 0);
  const all = of('accept') + of('decline') + of('request-changes');
  const months = Array.from({ length: MONTHS }, (_, at) => monthsBefore(since, -at));
  return {
    accepted: shareOf(of('accept'), all),
    declined: shareOf(of('decline'), all),
    changesAsked: shareOf(of('request-changes'), all),
    months: months.map((month) => ({
      month,
      count: rows.filter((row) => row.month === month).reduce((sum, { count }) => sum + count, 0),
    })),
  };
}

function proofShares(counts: ReadonlyMap<string, number>): SiteHealth['proofs'] {
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  return PROOFS.map((proof) => ({ proof, ...shareOf(counts.get(proof) ?? 0, all) }));
}

const shareOf = (count: number, of: number): CountedShare => ({ count, of, ...jeffreysInterval(count, of) });
