import { describe, expect, it } from 'vitest';
import { ACTIONS, type Action, can } from '../../../shared/domain/can/can';
import { isAtLeast, ROLES } from '../../../shared/domain/can/role';

/** For each action, the roles that may do it to what is their own, and to what is somebody else's. Our own rules. */
const MAY: Record<Action, { own: string; other: string }> = {
  'account.see': { own: 'reader contributor moderator keeper', other: '' },
  'account.change-password': { own: 'reader contributor moderator keeper', other: '' },
  'account.delete': { own: 'reader contributor moderator keeper', other: '' },
  'account.set-role': { own: '', other: 'keeper' },
  'account.make-reset-link': { own: 'keeper', other: 'keeper' },
  'account.list': { own: 'keeper', other: 'keeper' },
  'site.watch': { own: 'keeper', other: 'keeper' },
  'submission.post': { own: 'contributor moderator keeper', other: 'contributor moderator keeper' },
  'submission.see': { own: 'reader contributor moderator keeper', other: 'moderator keeper' },
  'submission.edit': { own: 'contributor moderator keeper', other: '' },
  'submission.withdraw': { own: 'reader contributor moderator keeper', other: '' },
  'submission.cut-link': { own: 'reader contributor moderator keeper', other: '' },
  'submission.decide': { own: '', other: 'moderator keeper' },
};

const rolesThatMay = (action: Action, ownerId: string | null) =>
  ROLES.filter((role) => can({ id: 'me', role }, action, { ownerId })).join(' ');

describe('can', () => {
  it.each(ACTIONS)('answers %s by role and owner', (action) => {
    expect(rolesThatMay(action, 'me')).toBe(MAY[action].own);
    expect(rolesThatMay(action, 'somebody')).toBe(MAY[action].other);
  });

  it('takes what nobody owns as somebody else’s', () => {
    for (const action of ACTIONS) expect(rolesThatMay(action, null)).toBe(MAY[action].other);
  });

  it('lets nobody who is not signed in do any of it', () => {
    expect(ACTIONS.filter((action) => can(null, action))).toEqual([]);
  });
});

describe('isAtLeast', () => {
  it('orders the roles', () => {
    expect(isAtLeast('keeper', 'reader')).toBe(true);
    expect(isAtLeast('moderator', 'moderator')).toBe(true);
    expect(isAtLeast('contributor', 'moderator')).toBe(false);
  });
});
