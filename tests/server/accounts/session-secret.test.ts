import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { keptSecret } from '../../../server/accounts/session-secret';

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'second-bench-secret-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

describe('keptSecret', () => {
  it('makes a key once, says so once, and gives it again', () => {
    const data = folder();
    const said: string[] = [];
    const first = keptSecret(join(data, 'x.db'), (line) => said.push(line));
    expect(Buffer.from(first, 'base64url')).toHaveLength(32);
    expect(keptSecret(join(data, 'x.db'), (line) => said.push(line))).toBe(first);
    expect(said).toEqual([expect.stringContaining(join(data, 'session-secret'))]);
    expect(keptSecret(join(folder(), 'x.db'), () => {})).not.toBe(first);
  });

  it('leaves a file that only its owner can read, and nothing else', () => {
    const data = folder();
    keptSecret(join(data, 'x.db'), () => {});
    expect(readdirSync(data)).toEqual(['session-secret']);
    expect(statSync(join(data, 'session-secret')).mode & 0o777).toBe(0o600);
  });

  it('refuses a key that is too short instead of signing with it', () => {
    const data = folder();
    writeFileSync(join(data, 'session-secret'), 'short');
    expect(() => keptSecret(join(data, 'x.db'), () => {})).toThrow(/too short/);
  });
});
