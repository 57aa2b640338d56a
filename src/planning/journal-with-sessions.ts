import type { Journal, Session } from '../journal/journal';
import { journalAsIf } from '../journal/journal-as-if';
import { compareSessions } from '../journal/resolve-sessions';

/** Sessions to think away from a journal, and sessions to think into it. */
export interface SessionsChanged {
  readonly without: readonly Session[];
  readonly added: readonly Session[];
}

function isSame(one: Session, other: Session): boolean {
  return (
    one.note === other.note &&
    one.entry.range.start === other.entry.range.start &&
    one.day === other.day &&
    one.movedFrom === other.movedFrom
  );
}

/**
 * The journal as it would be with other sessions in it. Only its sessions, and the days that it spans, read
 * differently; no note is written or read for it, so it is cheap enough to ask about one place after another.
 */
export function journalWithSessions(journal: Journal, changed: SessionsChanged): Journal {
  const days = changed.added.map((session) => session.day);
  return journalAsIf(journal, {
    span() {
      const span = journal.span();
      if (days.length === 0) return span;
      const first = Math.min(...days, ...(span ? [span.first] : []));
      const last = Math.max(...days, ...(span ? [span.last] : []));
      return { first, last };
    },
    sessions(first, last) {
      const kept = journal
        .sessions(first, last)
        .filter((session) => !changed.without.some((gone) => isSame(gone, session)));
      const added = changed.added.filter(({ day }) => first <= day && day <= last);
      return added.length === 0 ? kept : [...kept, ...added].sort(compareSessions);
    },
  });
}
