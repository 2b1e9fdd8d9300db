import { describe, expect, it } from 'vitest';
import { violations } from './arrows';
import { parseSource, readSources } from './source-files';

const sources = readSources();

describe('the rooms', () => {
  it('are all there to be looked at', () => {
    for (const room of ['app', 'server', 'shared', 'shared/stats', 'prisma', 'seed', 'tests']) {
      expect(sources.filter(({ path }) => path.startsWith(`${room}/`)).length, room).toBeGreaterThan(0);
    }
  });

  it('reach only what they may', () => {
    expect(sources.flatMap(violations)).toEqual([]);
  });
});

describe('violations', () => {
  const broken: [path: string, text: string][] = [
    ['shared/stats/a.ts', "import { z } from 'zod';"],
    ['shared/stats/a.ts', "import type { Slug } from '../schemas/terms';"],
    ['shared/stats/a.ts', 'export const now = () => new Date();'],
    ['shared/stats/a.ts', 'export const chance = () => Math.random();'],
    ['shared/domain/a.ts', "import { readFileSync } from 'node:fs';"],
    ['shared/domain/a.ts', "import fs from 'fs';"],
    ['shared/domain/a.ts', "import { getDb } from '../../server/db';"],
    ['shared/domain/a.ts', "import type { Prisma } from '../../prisma/generated/client';"],
    ['shared/domain/a.ts', "import { useState } from 'react';"],
    ['shared/domain/a.ts', 'export const secret = process.env.SECRET;'],
    ['shared/domain/a.ts', "export const load = () => import('../../tests/x');"],
    ['server/services/a.ts', "import { page } from '../../app/page';"],
    ['server/trpc/routers/a.ts', "import { getDb } from '../../../prisma/generated/client';"],
    ['server/trpc/routers/a.ts', "import { PrismaClient } from '@prisma/client';"],
    ['server/repositories/a.ts', "import { post } from '../services/post-case';"],
    ['server/repositories/a.ts', "export * from '../trpc/routers/look-up';"],
    ['app/page.tsx', "import { getDb } from '../server/db';"],
    ['app/page.tsx', "import { appRouter } from '../server/trpc/root';"],
    ['app/page.tsx', "import { type Prisma } from '../prisma/generated/client';"],
    ['server/cli/a.ts', "import { world } from '../../seed/world';"],
    ['seed/run.ts', "const x = require('../tests/x');"],
  ];
  it.each(broken)('finds what is broken in %s: %j', (path, text) => {
    expect(violations(parseSource(path, text)).length).toBeGreaterThan(0);
  });

  const sound: [path: string, text: string][] = [
    ['shared/stats/a.ts', "import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';"],
    ['shared/stats/a.ts', "import { layout } from './layout';\n// not Date, not Math.random\nexport const says = 'process.env';"],
    ['shared/domain/a.ts', "import { z } from 'zod';\nimport { count } from '../stats/counts';"],
    ['app/look-up.tsx', "import type { AppRouter } from '../server/trpc/root';"],
    ['app/api/trpc/[trpc]/route.ts', "import { appRouter } from '../../../../server/trpc/root';"],
    ['app/_trpc/server.ts', "import { createCaller } from '../../server/trpc/root';"],
    ['seed/run.ts', "import { getDb } from '../server/db';"],
  ];
  it.each(sound)('finds nothing in %s: %j', (path, text) => {
    expect(violations(parseSource(path, text))).toEqual([]);
  });
});
