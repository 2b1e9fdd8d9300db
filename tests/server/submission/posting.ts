import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import type { PrismaClient } from '../../../prisma/generated/client';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { createCaller } from '../../../server/trpc/root';
import type { Role } from '../../../shared/domain/can/role';
import { type DraftDocument, emptyDraft } from '../../../shared/schemas/submission';
import type { CaseRecord } from '../../../shared/schemas/case';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { ownPage } from '../trpc/test-request';

const allPhotos = mkdtempSync(join(tmpdir(), 'second-bench-photos-'));
afterAll(() => rmSync(allPhotos, { recursive: true, force: true }));

/** A database of this test's own with the small world, and callers for accounts that are added as they are asked for. */
export async function posting(cases: readonly CaseRecord[] = [], db: PrismaClient = testDatabase().db) {
  const photoFolder = join(allPhotos, randomUUID());
  forgetSubmitLimits();
  await fillDatabase(db, cases);
  const loaded = await loadCasebook(db);
  const casebook = async () => loaded;
  const as = async (id: string, role: Role = 'contributor') => {
    const at = new Date(0);
    await db.user.upsert({
      where: { id },
      create: { id, name: id, username: id, email: `${id}@bench.invalid`, role, createdAt: at, updatedAt: at },
      update: { role },
    });
    return createCaller({ ...ownPage, db, casebook, photoFolder, actor: { id, role } });
  };
  const visitor = createCaller({ ...ownPage, db, casebook, photoFolder });
  return { db, as, visitor, photoFolder };
}

/** A form that can be submitted as it is; override what the test is about. */
export function fullForm(override: Partial<DraftDocument> = {}): DraftDocument {
  return {
    ...emptyDraft('2025-03'),
    device: 'quellbrook-8-rev-a',
    symptoms: [{ symptom: 'grey-screen', present: true }],
    steps: [
      { key: 'a', kind: 'check', check: 'clock-at-processor', outcome: 'absent', designator: 'Y1', reading: '' },
      { key: 'b', kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: 'y1' }], result: 'cured' },
    ],
    causes: [{ cause: 'clock-crystal-stopped', designators: 'Y1' }],
    proof: 'substitution',
    provedBy: 'a',
    outcome: 'resolved',
    afterRepairChecks: ['clock-at-processor'],
    soakMinutes: '60',
    narrative: 'Grey screen from cold. No pulse at the processor; a new crystal cured it.',
    ...override,
  };
}
