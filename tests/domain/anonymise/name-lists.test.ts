import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { listModule } from './derive-name-lists';

describe('listModule', () => {
  it.each(['first-names', 'place-names'] as const)('derives the %s that the rules use from the published lists', (name) => {
    const stored = readFileSync(new URL(`../../../shared/domain/anonymise/${name}.ts`, import.meta.url), 'utf8');
    expect(stored === listModule(name)).toBe(true);
  }, 30_000);
});
