import assert from 'node:assert/strict';
import { openJournalFile } from '../../src/journal/calendar-file';
import type { Journal, Session } from '../../src/journal/journal';
import { JournalIndex } from '../../src/journal/journal-index';
import { type DayNumber, dayNumber, parseIsoDate } from '../../src/notation/time/iso-date';

/** An index of these notes, given by path. */
export function indexOf(notes: Readonly<Record<string, string>>, root = ''): JournalIndex {
  const index = new JournalIndex(root);
  for (const [path, text] of Object.entries(notes)) index.replace(openJournalFile(path, text));
  return index;
}

/** The number of a day that exists. */
export function day(text: string): DayNumber {
  const date = parseIsoDate(text);
  assert(date, `${text} is a date`);
  return dayNumber(date);
}

/** The days of a change, written as dates. */
export function days(...dates: string[]): ReadonlySet<DayNumber> {
  return new Set(dates.map(day));
}

/** A session in short: day, start if it has one, kind, and where it was moved from. */
export function inShort({ date, entry, kind, movedFrom }: Session): string {
  const start = entry.span === undefined ? [] : [`at ${entry.span.value.start / 60}`];
  return [date, ...start, kind, ...(movedFrom === undefined ? [] : [`from ${movedFrom}`])].join(' ');
}

/** The sessions of a period in short. */
export function sessionsOf(journal: Journal, first: string, last = first): string[] {
  return journal.sessions(day(first), day(last)).map(inShort);
}

/** Everything that a journal answers, for telling two of them apart. */
export function allOf(journal: Journal): unknown {
  const first = day('0001-01-01');
  const last = day('9998-12-31');
  const goals = new Set(journal.measurementsBetween(first, last).map(({ goal }) => goal));
  return {
    root: journal.root,
    plan: journal.plan,
    notes: [...journal.notes()].map(({ path, name, text, lineStarts, reading, outline }) => ({
      ...{ path, name, text, lineStarts },
      ...{ reading, outline },
    })),
    span: journal.span(),
    sessions: journal.sessions(first, last),
    open: journal.openSessions(first, last),
    duplicates: journal.duplicateSessions(first, last),
    measurements: journal.measurementsBetween(first, last),
    ofGoals: [...goals].sort().map((goal) => journal.measurements(goal)),
    bodyReports: journal.bodyReports(first, last),
    wins: journal.wins(first, last),
    names: (['with', 'where', 'region', 'kind'] as const).map((of) => journal.names(of)),
  };
}
