import { describe, expect, it } from 'vitest';
import { type Actor, can } from '../../../shared/domain/can/can';
import { ROLES } from '../../../shared/domain/can/role';
import { CASE_EVENTS, type CaseEvent, mayMove, moverOf, nextStatus } from '../../../shared/domain/submission/next-status';
import { CASE_STATUSES, type CaseStatus } from '../../../shared/schemas/case';

/**
 * Every cell, written out by hand: where the event leads, `o` for the owner and `m` for a moderator; `-` cannot happen.
 * Columns in the order of CASE_EVENTS.
 */
const TABLE: Record<CaseStatus, string> = {
  //                    save                 submit        withdraw     request-changes      accept      decline     retract      restore      merge     correct
  draft:
    '              draft:o              submitted:o   -            -                    -           -           -            -            -         -',
  submitted:
    '          -                    -             withdrawn:o  changes-requested:m  accepted:m  declined:m  -            -            merged:m  -',
  'changes-requested':
    'changes-requested:o  resubmitted:o withdrawn:o  -                    accepted:m  declined:m  -            submitted:m  -         -',
  resubmitted:
    '        -                    -             withdrawn:o  changes-requested:m  accepted:m  declined:m  -            -            merged:m  -',
  accepted:
    '           -                    -             -            -                    -           -           retracted:m  -            -         accepted:m',
  declined:
    '           -                    -             -            -                    -           -           -            submitted:m  -         -',
  withdrawn:
    '          -                    -             -            -                    -           -           -            submitted:o  -         -',
  retracted:
    '          -                    -             -            -                    -           -           -            accepted:m   -         -',
  merged:
    '             -                    -             -            -                    -           -           -            submitted:m  -         -',
};

const cells = CASE_STATUSES.flatMap((status) => {
  const row = TABLE[status].trim().split(/\s+/);
  return CASE_EVENTS.map((event, column): [CaseStatus, CaseEvent, string] => [status, event, row[column] ?? 'missing']);
});

const OWNER = 'one';
const actors: (Actor | null)[] = [null, ...ROLES.flatMap((role) => [OWNER, 'two'].map((id) => ({ id, role })))];

describe('nextStatus', () => {
  it.each(cells)('from %s by %s: %s', (status, event, cell) => {
    const [to = null, by] = cell === '-' ? [] : cell.split(':');
    expect(nextStatus(status, event)).toBe(to);
    expect(moverOf(status, event)).toBe(by === 'o' ? 'owner' : by === 'm' ? 'moderator' : null);
  });

  it('covers every status with every event', () => {
    expect(cells).toHaveLength(90);
    for (const status of CASE_STATUSES) expect(TABLE[status].trim().split(/\s+/)).toHaveLength(CASE_EVENTS.length);
  });
});

describe('mayMove', () => {
  it.each(cells)('in %s, lets %s be caused by those alone who may: %s', (status, event, cell) => {
    for (const actor of actors) {
      const owns = actor?.id === OWNER;
      const moderates = actor?.role === 'moderator' || actor?.role === 'keeper';
      // A reader may not post, so may not edit; but whoever posted while they could may still withdraw.
      const asOwner = owns && (event === 'withdraw' || actor?.role !== 'reader');
      const expected = cell.endsWith(':o') ? asOwner : cell.endsWith(':m') ? moderates && !owns : false;
      expect(mayMove(actor, event, { status, ownerId: OWNER }), `${actor?.role} ${actor?.id}`).toBe(expected);
    }
  });

  it('lets nobody move as the owner once the link is cut', () => {
    for (const actor of actors) {
      expect(mayMove(actor, 'withdraw', { status: 'submitted', ownerId: null })).toBe(false);
      expect(can(actor, 'submission.cut-link', { ownerId: null })).toBe(false);
    }
  });
});
