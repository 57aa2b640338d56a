import type { Session } from '../journal/journal';
import type { IsoDate } from '../notation/time/iso-date';

/** What has become of a session. */
export type SessionState = 'planned' | 'overdue' | 'done' | 'skipped' | 'moved';

/**
 * The state of a session on the day `today`. A session that its note says was moved, and that is not written on
 * the new day yet, stands there in the journal with `movedFrom`: on the new day its box counts, not the move.
 */
export function sessionState(session: Session, today: IsoDate): SessionState {
  if (session.entry.skipped) return 'skipped';
  if (session.entry.moved && session.movedFrom === undefined) return 'moved';
  if (session.entry.task?.checked) return 'done';
  return session.date < today ? 'overdue' : 'planned';
}

/** Whether a session in this state stands in the week: it is counted, and gaps are measured from it. */
export function stands(state: SessionState): boolean {
  return state === 'planned' || state === 'overdue' || state === 'done';
}

/** Whether the session is still to be trained, so that it can be moved, changed or skipped. */
export function isToDo(state: SessionState): boolean {
  return state === 'planned' || state === 'overdue';
}
