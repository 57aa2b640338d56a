import type { IsoDate } from '../../../src/notation/time/iso-date';
import { exportCalendar } from '../../../src/planning/calendar/export-calendar';
import type { ReviewReminder } from '../../../src/planning/calendar/review-event';
import { date, journalOf, type Notes } from '../journal-of';

/** What an export may be asked beside its notes. */
export interface Asked {
  readonly first?: string;
  readonly last?: string;
  readonly today?: string;
  readonly zone?: string;
  readonly stamp?: string;
  readonly alarmMinutes?: number;
  readonly previous?: string;
  readonly journalId?: string;
  readonly review?: ReviewReminder;
}

/** The export of these notes: March 2026 in Lisbon, unless asked otherwise. */
export function exported(notes: Notes, asked: Asked = {}): string {
  const { first = '2026-03-01', last = '2026-03-31', today = '2026-03-02', zone = 'Europe/Lisbon' } = asked;
  const { stamp = '2026-03-01T10:15Z', journalId = 'heron', alarmMinutes, previous, review } = asked;
  const day = (text: string): IsoDate => date(text);
  return exportCalendar(journalOf(notes), {
    first: day(first),
    last: day(last),
    today: day(today),
    zone,
    stamp: Date.parse(stamp) / 60_000,
    journalId,
    ...(alarmMinutes === undefined ? {} : { alarmMinutes }),
    ...(review === undefined ? {} : { review }),
    ...(previous === undefined ? {} : { previous }),
  });
}

/** The events of a file as their lines without folds. */
export function eventsOf(text: string): readonly (readonly string[])[] {
  const unfolded = text.replaceAll('\r\n ', '').split('\r\n');
  const events: string[][] = [];
  for (const line of unfolded) {
    if (line === 'BEGIN:VEVENT') events.push([]);
    else if (line !== 'END:VEVENT') events.at(-1)?.push(line);
  }
  return events;
}

/** One value of each event, by the property's name. */
export function values(text: string, name: string): readonly string[] {
  return eventsOf(text).map(
    (lines) =>
      lines
        .find((line) => line.startsWith(`${name}:`) || line.startsWith(`${name};`))
        ?.slice(name.length + 1) ?? '',
  );
}

/** Each event in short: identifier without its ending, sequence number, state and start. */
export function inShort(text: string): readonly string[] {
  const [uids, sequences, states, starts] = ['UID', 'SEQUENCE', 'STATUS', 'DTSTART'].map((name) =>
    values(text, name),
  );
  return (uids ?? []).map((uid, index) =>
    [
      uid.replace(/-heron@.*$/, ''),
      sequences?.[index],
      states?.[index]?.toLowerCase(),
      starts?.[index]?.replace(/^.*:/, ''),
    ].join(' '),
  );
}
