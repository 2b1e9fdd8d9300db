import { describe, expect, it } from 'vitest';
import { loggedError } from '../../../server/watching/logged-error';

const PRIVATE = 'ask Wilbert at the third bench';

function thrownBy(act: () => unknown): unknown {
  try {
    act();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}

describe('loggedError', () => {
  it('says what it was and where', () => {
    const logged = loggedError(thrownBy(() => (undefined as unknown as { x: string }).x));
    expect(logged).toMatchObject({ type: 'TypeError', code: null, cause: null });
    expect(logged.message).toContain('undefined');
    expect(logged.at[0]).toMatch(/^at .*logged-error\.test\.ts/);
  });

  it('leaves out messages that quote what was typed, wherever they stand in the chain of causes', () => {
    const syntax = thrownBy(() => JSON.parse(PRIVATE));
    expect(String(syntax)).toContain(PRIVATE.slice(0, 3));
    const query = Object.assign(new Error(`Invalid invocation with ${PRIVATE}`), {
      name: 'PrismaClientKnownRequestError',
      code: 'P2002',
    });
    const logged = loggedError(new Error('It failed.', { cause: Object.assign(query, { cause: syntax }) }));
    expect(JSON.stringify(logged)).not.toMatch(/ask|Wilbert|third/);
    expect(logged.cause).toMatchObject({ type: 'PrismaClientKnownRequestError', code: 'P2002', message: null });
    expect(logged.cause?.cause).toMatchObject({ type: 'SyntaxError', message: null });
  });

  it('says no more than the kind of what is not an error', () => {
    expect(loggedError(PRIVATE)).toEqual({ type: 'string', code: null, message: null, at: [], cause: null });
  });

  it('follows causes that go round in a circle only so far', () => {
    const error = new Error('round');
    error.cause = error;
    expect(JSON.stringify(loggedError(error)).match(/round/g)?.length).toBeLessThan(12);
  });
});
