import { describe, expect, it } from 'vitest';
import { requestFacts } from '../../../server/trpc/request-facts';

const plain = { siteUrl: null, trustProxy: false };
const facts = (headers: Record<string, string>, settings: Parameters<typeof requestFacts>[1] = plain) =>
  requestFacts(new Headers(headers), settings);

describe('requestFacts', () => {
  it.each([
    ['a page of the same host', { host: 'bench.example', origin: 'http://bench.example' }, true],
    ['another site', { host: 'bench.example', origin: 'http://elsewhere.example' }, false],
    ['another port', { host: 'bench.example:4310', origin: 'http://bench.example:4311' }, false],
    ['a page without an address, such as a sandboxed frame', { host: 'bench.example', origin: 'null' }, false],
    ['a browser that names no origin but says it is the same', { host: 'bench.example', 'sec-fetch-site': 'same-origin' }, true],
    ['a sibling site', { host: 'bench.example', 'sec-fetch-site': 'same-site' }, false],
    ['a program that says nothing', { host: 'bench.example' }, false],
    [
      'a sender that pretends a proxy',
      { host: 'bench.example', 'x-forwarded-host': 'evil.example', origin: 'http://evil.example' },
      false,
    ],
  ])('tells whether %s sent it', (_, headers, expected) => {
    expect(facts(headers).sameOrigin).toBe(expected);
  });

  it('goes by the address that the site is known under, where it is set', () => {
    const settings = { siteUrl: 'https://bench.example/', trustProxy: false };
    expect(facts({ host: '10.0.0.5:4310', origin: 'https://bench.example' }, settings).sameOrigin).toBe(true);
    expect(facts({ host: '10.0.0.5:4310', origin: 'http://10.0.0.5:4310' }, settings).sameOrigin).toBe(false);
  });

  it('believes a proxy where there is one: its last address, its protocol, its host', () => {
    const headers = {
      'x-forwarded-for': '203.0.113.9, 198.51.100.4',
      'x-forwarded-proto': 'https',
      'x-forwarded-host': 'bench.example',
      origin: 'https://bench.example',
    };
    expect(facts(headers, { siteUrl: null, trustProxy: true })).toMatchObject({
      address: '198.51.100.4',
      isSecure: true,
      sameOrigin: true,
    });
    expect(facts(headers)).toMatchObject({ isSecure: false, sameOrigin: false });
  });

  it('is secure where the site is known under https', () => {
    expect(facts({}, { siteUrl: 'https://bench.example', trustProxy: false }).isSecure).toBe(true);
    expect(facts({}, { siteUrl: 'http://bench.example', trustProxy: false }).isSecure).toBe(false);
  });
});
