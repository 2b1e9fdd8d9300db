import { describe, expect, it } from 'vitest';
import { chromiumSentence, findChromium } from '../browser/harness/find-chromium.mjs';

const only = (path: string) => (asked: string) => asked === path;

describe('findChromium', () => {
  it('takes what CHROMIUM_PATH names before anything else', () => {
    const env = { CHROMIUM_PATH: '/my/chromium', PATH: '/usr/bin' };
    expect(findChromium({ env, platform: 'linux', exists: () => true })).toBe('/my/chromium');
  });

  it('finds none when CHROMIUM_PATH is wrong, instead of quietly taking another', () => {
    const env = { CHROMIUM_PATH: '/my/chromium', PATH: '/usr/bin' };
    expect(findChromium({ env, platform: 'linux', exists: only('/usr/bin/chromium') })).toBeNull();
  });

  it('looks along the search path and at the usual places', () => {
    expect(findChromium({ env: { PATH: '/a:/b' }, platform: 'linux', exists: only('/b/chromium') })).toBe('/b/chromium');
    expect(findChromium({ env: {}, platform: 'linux', exists: only('/snap/bin/chromium') })).toBe('/snap/bin/chromium');
  });
});

describe('chromiumSentence', () => {
  it('says how to get it', () => {
    expect(chromiumSentence({ env: {}, platform: 'linux' })).toContain('apt-get install -y chromium');
    expect(chromiumSentence({ env: {}, platform: 'darwin' })).toContain('CHROMIUM_PATH');
  });

  it('says that CHROMIUM_PATH is wrong when it is', () => {
    expect(chromiumSentence({ env: { CHROMIUM_PATH: '/x' }, platform: 'linux' })).toContain('CHROMIUM_PATH names /x');
  });
});
