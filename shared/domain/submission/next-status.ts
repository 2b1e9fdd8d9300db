import type { CaseStatus } from '../../schemas/case';
import { type Action, type Actor, can, type Target } from '../can/can';

/** What can happen to a case on its way. */
export const CASE_EVENTS = ['save', 'submit', 'withdraw', 'request-changes', 'accept', 'decline', 'retract', 'restore', 'merge', 'correct'] as const;
export type CaseEvent = (typeof CASE_EVENTS)[number];

/** Who makes it happen: whoever posted the case, or a moderator who did not. */
export type Mover = 'owner' | 'moderator';

type Move = { to: CaseStatus; by: Mover };
const byOwner = (to: CaseStatus): Move => ({ to, by: 'owner' });
const byModerator = (to: CaseStatus): Move => ({ to, by: 'moderator' });

const WAITING = {
  withdraw: byOwner('withdrawn'),
  'request-changes': byModerator('changes-requested'),
  accept: byModerator('accepted'),
  decline: byModerator('declined'),
  merge: byModerator('merged'),
} satisfies Partial<Record<CaseEvent, Move>>;

/**
 * Where each event leads from each status, and who may cause it; what is not listed cannot happen. What is published
 * is taken back by a moderator (the statistics have to follow), what is not yet, by its owner. Each end but the first
 * can be undone by whoever brought it about.
 */
const MOVES: Record<CaseStatus, Partial<Record<CaseEvent, Move>>> = {
  draft: { save: byOwner('draft'), submit: byOwner('submitted') },
  submitted: WAITING,
  'changes-requested': {
    save: byOwner('changes-requested'),
    submit: byOwner('resubmitted'),
    withdraw: byOwner('withdrawn'),
    accept: byModerator('accepted'),
    decline: byModerator('declined'),
    restore: byModerator('submitted'),
  },
  resubmitted: WAITING,
  accepted: { retract: byModerator('retracted'), correct: byModerator('accepted') },
  declined: { restore: byModerator('submitted') },
  withdrawn: { restore: byOwner('submitted') },
  retracted: { restore: byModerator('accepted') },
  merged: { restore: byModerator('submitted') },
};

/** The status that an event leads to; null where it cannot happen in this one. */
export function nextStatus(current: CaseStatus, event: CaseEvent): CaseStatus | null {
  return MOVES[current][event]?.to ?? null;
}

/** Who may cause an event in this status; null where it cannot happen. */
export function moverOf(current: CaseStatus, event: CaseEvent): Mover | null {
  return MOVES[current][event]?.by ?? null;
}

/** Whether somebody may cause this event now: it can happen, and they are who may. */
export function mayMove(actor: Actor | null, event: CaseEvent, at: Target & { status: CaseStatus }): boolean {
  const mover = moverOf(at.status, event);
  if (mover === null) return false;
  return can(actor, mover === 'moderator' ? 'submission.decide' : ownersAction(event), at);
}

function ownersAction(event: CaseEvent): Action {
  return event === 'withdraw' ? 'submission.withdraw' : 'submission.edit';
}
