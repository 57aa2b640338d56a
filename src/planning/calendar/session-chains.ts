import type { Journal, Session } from '../../journal/journal';
import { comparePaths } from '../../journal/note-path';
import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';

/** Where a session was first written, and how it came to where it stands. */
export interface SessionOrigin {
  readonly date: IsoDate;
  readonly kind: string;
  /** Its place among the sessions of its kind that were first written on that day, from 1. */
  readonly ordinal: number;
  /** How often it was moved to another day. */
  readonly moves: number;
  /** Every day on which it stood, the first one first. */
  readonly days: readonly DayNumber[];
}

/** The sessions of a journal, each with where it came from. */
export interface SessionChains {
  /** Every session of the journal, those that moved on left out, in order of day and time. */
  readonly sessions: readonly Session[];
  originOf(session: Session): SessionOrigin;
}

/** Every day that the notation can write. */
const firstDay = dayNumber('0001-01-01' as IsoDate);
const lastDay = dayNumber('9999-12-31' as IsoDate);

function inOrderOfText(a: Session, b: Session): number {
  return a.day - b.day || comparePaths(a.note, b.note) || a.entry.range.start - b.entry.range.start;
}

/** A session stands where it was moved to, unless it was given up. */
function movesOn({ entry }: Session): boolean {
  return entry.moved !== undefined && entry.skipped === undefined;
}

function names(fields: readonly { readonly value: string }[]): string {
  return fields.map(({ value }) => value).join(',');
}

/** How much of what a session's line says stands in another line as well. */
function likeness({ entry: one }: Session, { entry: other }: Session): number {
  return [
    one.span?.value.start === other.span?.value.start,
    one.length?.value.minutes === other.length?.value.minutes,
    one.routine?.value === other.routine?.value,
    one.where?.value === other.where?.value,
    names(one.for) === names(other.for),
    names(one.with) === names(other.with),
  ].filter(Boolean).length;
}

/**
 * Follows `moved:` through the notes: a session that was moved is written again on its new day, and is the same one
 * there. Of several sessions of its kind on that day it is the one most like it, and of those equally like it the
 * last, because a moved session is written behind what stands there already.
 */
export function sessionChains(journal: Journal): SessionChains {
  const all = journal.sessions(firstDay, lastDay);
  const written = all.filter(({ movedFrom }) => movedFrom === undefined).sort(inOrderOfText);
  const byDay = new Map<string, Session[]>();
  for (const session of written) {
    const name = `${session.day} ${session.kind}`;
    const others = byDay.get(name);
    if (others) others.push(session);
    else byDay.set(name, [session]);
  }

  const before = new Map<Session, Session>();
  const comesFrom = (session: Session, origin: Session): boolean => {
    for (let one: Session | undefined = session; one; one = before.get(one)) if (one === origin) return true;
    return false;
  };
  for (const session of written) {
    const target = session.entry.moved?.value;
    if (!movesOn(session) || target === undefined) continue;
    const candidates = (byDay.get(`${dayNumber(target)} ${session.kind}`) ?? []).filter(
      (one) => !before.has(one) && !comesFrom(session, one),
    );
    let best: Session | undefined;
    for (const one of candidates) {
      if (!best || likeness(one, session) >= likeness(best, session)) best = one;
    }
    if (best) before.set(best, session);
  }

  /** The written line from which a session that is not written on its day was moved. */
  const lineOf = (session: Session): Session =>
    session.movedFrom === undefined
      ? session
      : (written.find(({ note, entry }) => note === session.note && entry === session.entry) ?? session);

  const ordinalOf = (first: Session): number =>
    (byDay.get(`${first.day} ${first.kind}`) ?? []).filter((one) => !before.has(one)).indexOf(first) + 1;

  return {
    sessions: all.filter((session) => session.movedFrom !== undefined || !movesOn(session)),
    originOf(session) {
      const days: DayNumber[] = session.movedFrom === undefined ? [] : [session.day];
      let first = lineOf(session);
      for (let one: Session | undefined = first; one; one = before.get(one)) {
        first = one;
        days.unshift(one.day);
      }
      return { date: first.date, kind: first.kind, ordinal: ordinalOf(first), moves: days.length - 1, days };
    },
  };
}
