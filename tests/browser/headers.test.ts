import { createHash } from 'node:crypto';
import { describe, expect, inject, it } from 'vitest';
import { addressOf, STANDING_EXAMPLE } from './ask-page';
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

  it.each(['/casebook', '/sign-in', '/no-such-page', '/api/trpc/account.me', '/api/account/download'])(
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

describe('a page that is kept for whoever asks again', () => {
  it('lets no script run but those of this site, and the very ones that stand in it', async () => {
    const answer = await fetch(addressOf('/', [['q', STANDING_EXAMPLE]]));
    const inline = [...(await answer.text()).matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)].map(([, text = '']) => text);
    expect(inline.length).toBeGreaterThan(0);
    // Content Security Policy Level 3, section 2.3.1: a source may be the hash of a script's text, in base64.
    const hashes = inline.map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`);
    expect(policyOf(answer.headers).get('script-src')?.split(' ').sort()).toEqual(["'self'", ...new Set(hashes)].sort());
    const [directive, other] = [policyOf(answer.headers), policyOf((await fetch(addressOf('/casebook'))).headers)];
    for (const name of other.keys()) if (name !== 'script-src') expect(directive.get(name), name).toBe(other.get(name));
  });

  it('runs its scripts, for whoever asks first and for who asks again', async () => {
    for (let visit = 0; visit < 2; visit += 1) {
      const page = await openPage();
      await page.goto(addressOf('/', [['q', 'picture rolls']]));
      // It shows only where scripts run.
      await page.locator('.slash-key').waitFor();
      await page.getByRole('link', { name: /make it absent/i }).click();
      await page.waitForURL(/f=symptom/);
    }
  });

  it('is not for somebody who is signed in, nor theirs for others', async () => {
    const address = addressOf('/', [['q', 'no sound, garbled']]);
    const asGuest = await (await fetch(address)).text();
    const page = await openPage();
    await page.goto(addressOf('/sign-in', [['next', '/']]));
    await page.getByLabel('Name', { exact: true }).fill('demo-reader');
    await page.getByLabel('Password', { exact: true }).fill('marrow-lane-reading');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.locator('.site-account', { hasText: 'demo-reader' }).waitFor();
    const answer = await page.goto(address);
    expect(await page.locator('.site-account').innerText()).toContain('demo-reader');
    expect(answer?.headers()['cache-control']).toContain('no-store');
    const again = await fetch(address);
    expect(await again.text()).toBe(asGuest);
    expect(asGuest).not.toContain('demo-reader');
    expect(again.headers.get('vary')).toMatch(/\bCookie\b/);
  });

  it('is small enough for a phone', async () => {
    // The size of what is sent before it is compressed; a phone's processor has to read all of it.
    for (const words of [STANDING_EXAMPLE, 'dead, no power light, supply fine', 'no sound but picture fine']) {
      const { size } = await (await fetch(addressOf('/', [['q', words], ['on', 'quellbrook-8']]))).blob();
      expect(size, words).toBeLessThan(110_000);
    }
  });
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
