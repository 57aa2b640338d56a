import type { Journal, Need } from '../journal/journal';
import type { IsoDate } from '../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../notation/time/iso-week';
import type { WallMinutes } from '../notation/time/wall-clock';
import type { Message } from '../training/finding';
import { type CheckContext, type CheckOptions, checkContext } from '../training/week-under-check';
import { changeChecker } from './findings-added';
import { journalWithSessions } from './journal-with-sessions';
import { demandsOf } from './next-week/demand';
import { habitsBefore } from './next-week/habits';
import { daysLeft } from './next-week/place';
import { type LeftOutDemand, type PlacedDemand, placeDemands } from './next-week/place-demands';
import { weekNotes } from './next-week/week-notes';
import type { NoteChange } from './note-change';

/** A session that the week gains. */
export interface PlacedSession {
  readonly date: IsoDate;
  /** Undefined in a journal whose sessions have no times. */
  readonly start?: WallMinutes;
  readonly minutes: number;
  readonly kind: string;
  readonly goal?: string;
  /** Why it stands there, in a few words. */
  readonly reason: Message;
}

/** A session that the week is asked to hold and that found no place. */
export interface LeftOutSession {
  readonly kind: string;
  readonly goal?: string;
  /** The need that asks for it; `undefined` when the minimum of a rule does. */
  readonly need?: Need;
  readonly why: Message;
}

/** A week's notes, ready to be shown and written. */
export interface NextWeek {
  readonly week: IsoWeek;
  /** In order of day and time. */
  readonly placed: readonly PlacedSession[];
  readonly leftOut: readonly LeftOutSession[];
  readonly changes: readonly NoteChange[];
}

/** The day, the clock, and the week to write: the one after that of `today` when left out. */
export interface NextWeekOptions extends CheckOptions {
  readonly week?: IsoWeek;
}

/** Sessions placed change what the others count for; so few rounds see them all counted again. */
const mostRounds = 12;

function contextWith(journal: Journal, placed: readonly PlacedDemand[], options: CheckOptions): CheckContext {
  const added = placed.map(({ place }) => place.timed.facts.session);
  return checkContext(journalWithSessions(journal, { without: [], added }), options);
}

/**
 * Lays into the week what the needs of its open goals, the needs of every week and the minima of the rules lack, on
 * the weekdays and times of the weeks before or in free hours, so that no rule is broken, and writes it as changes
 * of notes. What stands in the week is kept, word for word; every day that is not over has a note afterwards.
 * Planning again after the changes are made changes nothing.
 */
export function planNextWeek(journal: Journal, options: NextWeekOptions): NextWeek {
  const week = options.week ?? addWeeks(isoWeekOf(options.today), 1);
  const { standing, monday } = checkContext(journal, options).weeks(week);
  let places = 0;
  const number = () => {
    places += 1;
    return places;
  };
  let placed: readonly PlacedDemand[] = [];
  let leftOut: readonly LeftOutDemand[] = [];
  for (let round = 0; round < mostRounds; round += 1) {
    const context = contextWith(journal, placed, options);
    const habits = habitsBefore(context.weeks, week);
    const demands = demandsOf(context, week, habits);
    const check = changeChecker(context.journal, options);
    const placement = placeDemands(context, week, demands, habits, check, number);
    placed = [...placed, ...placement.placed];
    leftOut = placement.leftOut;
    if (placement.placed.length === 0) break;
  }
  const days = daysLeft(checkContext(journal, options), monday);
  const isAsked = placed.length > 0 || standing.length > 0;
  return {
    week,
    placed: placed.map(placedSession).sort((one, other) => compare(one, other)),
    leftOut: leftOut.map(({ demand, why }) => ({
      kind: demand.session.kind,
      ...(demand.need?.goal === undefined ? {} : { goal: demand.need.goal }),
      ...(demand.need ? { need: demand.need } : {}),
      why,
    })),
    changes: isAsked ? weekNotes(journal, days, placed, standing) : [],
  };
}

function placedSession({ demand, place }: PlacedDemand): PlacedSession {
  const goal = demand.need?.goal;
  return {
    date: place.timed.facts.session.date,
    ...(place.start === undefined ? {} : { start: place.start }),
    minutes: demand.minutes,
    kind: demand.session.kind,
    ...(goal === undefined ? {} : { goal }),
    reason: place.reason,
  };
}

function compare(one: PlacedSession, other: PlacedSession): number {
  if (one.date !== other.date) return one.date < other.date ? -1 : 1;
  return (one.start ?? 1440) - (other.start ?? 1440);
}
