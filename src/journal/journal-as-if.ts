import type { Journal } from './journal';
import { isOpenSession } from './resolve-sessions';

/**
 * A journal that answers as another one does, but for what `changes` answers otherwise. No note is read or written for
 * it, and what is not changed is asked of the other one anew each time.
 */
export function journalAsIf(
  journal: Journal,
  changes: Partial<Pick<Journal, 'plan' | 'span' | 'sessions'>>,
): Journal {
  return {
    root: journal.root,
    plan: journal.plan,
    notes: () => journal.notes(),
    note: (path) => journal.note(path),
    file: (path) => journal.file(path),
    notesOf: (day) => journal.notesOf(day),
    span: () => journal.span(),
    sessions: (first, last) => journal.sessions(first, last),
    openSessions: (first, last) =>
      changes.sessions
        ? changes.sessions(first, last).filter(isOpenSession)
        : journal.openSessions(first, last),
    duplicateSessions: (first, last) => journal.duplicateSessions(first, last),
    measurements: (goal, metric) => journal.measurements(goal, metric),
    measurementsBetween: (first, last) => journal.measurementsBetween(first, last),
    bodyReports: (first, last, kind) => journal.bodyReports(first, last, kind),
    wins: (first, last) => journal.wins(first, last),
    names: (of) => journal.names(of),
    ...changes,
  };
}
