import { concentrationBin } from '../../../shared/domain/health/concentration';
import type { Db } from '../../db';
import { freezeBin, listOwnEvidence } from '../../repositories/health-repository';

/**
 * Before links are cut or an account goes: keeps, for each device, how much of its evidence was this one contributor's, as a
 * coarse bin and without saying whose. Run it in the transaction of the cut.
 */
export async function freezeConcentration(db: Db, userId: string): Promise<void> {
  for (const { slug, own, cases } of await listOwnEvidence(db, userId)) {
    const bin = concentrationBin(own, cases);
    if (bin !== null) await freezeBin(db, slug, bin);
  }
}
