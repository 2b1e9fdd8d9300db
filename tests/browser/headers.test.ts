import { describe, expect, inject, it } from 'vitest';
import { addressOf } from './ask-page';
import { openPage } from './harness/open-page';

/** The policy's directives by name. */
function policyOf(headers: Headers): Map<string, string> {
  const directives = (headers.get('content-security-policy') ?? '').split(';').map((part) => part.trim().split(/ (.*)/s));
  return new Map(directives.map(([name = '', sources = '']) => [name, sources]));
}

describe('every answer', () => {
  it('forbids guessing of types and framing by other sites, and keeps addresses from them', async () => {
    const { headers } = await fetch(inject('serverUrl'));
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(policyOf(headers).get('frame-ancestors')).toBe("'none'");
    // An address holds a whole question, which is nobody else's business.
    expect(headers.get('referrer-policy')).toBe('same-origin');
    expect(headers.get('x-powered-by')).toBeNull();
  });

  it.each(['/', '/sign-in', '/no-such-page', '/api/trpc/account.me', '/api/account/download'])(
    'at %s lets no script run that does not carry its nonce',
    async (path) => {
      const [first, second] = await Promise.all([0, 1].map(() => fetch(addressOf(path), { redirect: 'manual' })));
      const [policy, other] = [first, second].map((answer) => policyOf(answer?.headers ?? new Headers()));
      // Content Security Policy Level 3, section 2.3.1: 'strict-dynamic' makes browsers pass over 'self'.
      expect(policy?.get('script-src')).toMatch(/^'self' 'nonce-[A-Za-z0-9+/]{24}' 'strict-dynamic'$/);
      expect(other?.get('script-src')).not.toBe(policy?.get('script-src'));
      expect(policy?.get('default-src')).toBe("'self'");
      expect(policy?.get('object-src')).toBe("'none'");
      const nonce = /nonce-([^']+)/.exec(policy?.get('script-src') ?? '')?.[1];
      const scripts = (await first?.text())?.match(/<script[^>]*>/g) ?? [];
      expect(scripts.filter((script) => !script.includes(`nonce="${nonce}"`))).toEqual([]);
    },
  );
});

describe('a script that somebody slipped into a page', () => {
  it('does not run, and the browser says which rule it broke', async () => {
    const page = await openPage({ expected: /Content Security Policy/ });
    await page.goto(addressOf('/safety'));
    const broken = await page.evaluate(() => {
      const rule = new Promise<string>((resolve) => {
        document.addEventListener('securitypolicyviolation', (event) => resolve(event.effectiveDirective));
      });
      const slipped = document.createElement('div');
      slipped.innerHTML = '<img src="data:," alt="" onerror="document.title = \'ran\'">';
      document.body.append(slipped);
      return rule;
    });
    expect(broken).toBe('script-src-attr');
    expect(await page.title()).not.toBe('ran');
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

describe('a form of another site', () => {
  it.each(['account.signIn', 'account.signOut'])('changes nothing through %s', async (path) => {
    const ask = (origin: string) =>
      fetch(addressOf(`/api/trpc/${path}`), {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin },
        body: JSON.stringify({ json: { name: 'demo-reader', password: 'marrow-lane-reading' } }),
      });
    const foreign = await ask('https://elsewhere.example');
    expect(foreign.status).toBe(403);
    expect(foreign.headers.get('set-cookie')).toBeNull();
    expect(await foreign.text()).toContain('other-origin');
    expect((await ask(inject('serverUrl'))).status).not.toBe(403);
  });
});
