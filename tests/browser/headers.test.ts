import { describe, expect, inject, it } from 'vitest';
import { openPage } from './harness/open-page';

describe('every answer', () => {
  it('forbids guessing of types and framing by other sites, and keeps addresses from them', async () => {
    const { headers } = await fetch(inject('serverUrl'));
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
    // An address holds a whole question, which is nobody else's business.
    expect(headers.get('referrer-policy')).toBe('same-origin');
    expect(headers.get('x-powered-by')).toBeNull();
  });
});

describe('the first page', () => {
  for (const scripts of [true, false]) {
    it(`opens ${scripts ? 'with' : 'without'} scripts, and asks for nothing from elsewhere`, async () => {
      const page = await openPage({ scripts });
      const response = await page.goto(inject('serverUrl'));
      expect(response?.status()).toBe(200);
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    });
  }
});
