import { type CalendarTime, dayOf, readCalendarTime } from '../../journal/calendar/calendar-time';
import { type CalendarComponent, readComponents } from '../../journal/calendar/component';
import { contentLines } from '../../journal/calendar/content-lines';
import { isOwnUid } from '../../journal/calendar/own-events';
import { propertyName, readProperty } from '../../journal/calendar/property';
import type { DayNumber } from '../../notation/time/iso-date';
import { isUidOf } from './event-identity';

/** An event as an earlier export wrote it. */
export interface PreviousEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly isCancelled: boolean;
  /** The day on which it begins, on its own clock. */
  readonly day: DayNumber;
  /** All of its lines, not folded. */
  readonly lines: readonly string[];
}

/** What an earlier export of a journal holds. */
export interface PreviousExport {
  readonly events: ReadonlyMap<string, PreviousEvent>;
  /** The definitions of zones in it, each by its name. */
  readonly zones: ReadonlyMap<string, readonly string[]>;
}

function linesOf({ name, lines, parts }: CalendarComponent): readonly string[] {
  return [`BEGIN:${name}`, ...lines.map(({ text }) => text), ...parts.flatMap(linesOf), `END:${name}`];
}

function propertyValue({ lines }: CalendarComponent, name: string): string | undefined {
  const line = lines.find((one) => propertyName(one) === name);
  return line && readProperty(line)?.value;
}

function previousEvent(component: CalendarComponent): PreviousEvent | undefined {
  const uid = propertyValue(component, 'uid');
  const start: CalendarTime | undefined = readCalendarTime(
    propertyValue(component, 'dtstart') ?? '',
    undefined,
  );
  if (uid === undefined || !start) return undefined;
  return {
    uid,
    sequence: Math.max(0, Math.trunc(Number(propertyValue(component, 'sequence') ?? 0)) || 0),
    isCancelled: propertyValue(component, 'status') === 'CANCELLED',
    day: dayOf(start),
    lines: linesOf(component),
  };
}

function partsOf(text: string): readonly CalendarComponent[] {
  return readComponents(contentLines(text)).calendars.flatMap(({ parts }) => parts);
}

/**
 * The events of a journal in the text of an earlier export; those of others, and what cannot be read, are left out.
 * @param journalId as given to the export
 */
export function readPreviousExport(text: string, journalId: string): PreviousExport {
  const parts = partsOf(text);
  const events = parts
    .filter(({ name }) => name === 'VEVENT')
    .flatMap((component) => previousEvent(component) ?? [])
    .filter(({ uid }) => isUidOf(uid, journalId));
  const zones = parts
    .filter(({ name }) => name === 'VTIMEZONE')
    .map((component) => [propertyValue(component, 'tzid') ?? '', linesOf(component)] as const);
  return { events: new Map(events.map((event) => [event.uid, event])), zones: new Map(zones) };
}

/** Whose events a file holds, as somebody sees it who is about to write over it. */
export type FileContents = 'this-journal' | 'another-journal' | 'something-else' | 'nothing';

/** What would be lost by writing an export of the journal over a file with this text. */
export function contentsOf(text: string, journalId: string): FileContents {
  if (text.trim() === '') return 'nothing';
  const parts = partsOf(text);
  const uids = parts
    .filter(({ name }) => name !== 'VTIMEZONE')
    .map((part) => propertyValue(part, 'uid') ?? '');
  if (parts.length === 0 || uids.some((uid) => !isOwnUid(uid))) return 'something-else';
  return uids.every((uid) => isUidOf(uid, journalId)) ? 'this-journal' : 'another-journal';
}
