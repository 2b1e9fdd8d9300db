import { describe, expect, it } from 'vitest';
import { nameFault } from './names';
import { listFiles } from './source-files';

describe('the names of files and folders', () => {
  it('are kebab-case and say what is inside', () => {
    const faults = listFiles()
      .filter((path) => !path.startsWith('tests/reference/'))
      .map(nameFault)
      .filter((fault) => fault !== null);
    expect(faults).toEqual([]);
  });
});

describe('nameFault', () => {
  it.each(['app/(lookup)/page.tsx', 'app/api/trpc/[trpc]/route.ts', 'app/cases/[...id]/page.tsx', 'app/_components/icons.tsx', 'vitest.config.ts',
    'tests/server/db.test.ts', '.gitignore', 'prisma/migrations/20260304050607_add_month/migration.sql', 'README.md', '.ci/run'])(
    'accepts %s',
    (path) => expect(nameFault(path)).toBeNull(),
  );

  it.each(['app/_components/ChanceBar.tsx', 'shared/stats/cause_prior.ts', 'shared/Domain/case.ts', 'server/utils.ts', 'server/date-utils.ts',
    'shared/helpers/case.ts', 'tests/setup/misc.ts'])(
    'refuses %s',
    (path) => expect(nameFault(path)).toContain(path),
  );
});
