import { describe, expect, it } from 'vitest';
import { safePath } from '../../../app/(account)/_parts/safe-path';

describe('safePath', () => {
  it.each(['/', '/cases', '/?q=grey+screen%2C+clock+present&on=quellbrook-8', '/plan?q=a//b'])('keeps %s', (path) => {
    expect(safePath(path)).toBe(path);
  });

  it.each([
    '',
    'cases',
    'https://elsewhere.example/',
    '//elsewhere.example/',
    '/\\elsewhere.example/',
    '/\t/elsewhere.example/',
    '/\n/elsewhere.example',
    'javascript:alert(1)',
    `/${'a'.repeat(3000)}`,
    null,
    undefined,
    ['/cases'],
  ])('leads %j to the account page', (path) => {
    expect(safePath(path)).toBe('/account');
  });
});
