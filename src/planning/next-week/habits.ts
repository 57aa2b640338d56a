import type { Weekday } from '../../notation/entries';
import { isoWeekday } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import { addWeeks } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import type { SessionFacts } from '../../training/session-facts';
import { median } from '../../training/statistics/order-statistics';
import type { WeekReader } from '../../training/training-week';

/** How many weeks before the planned one are looked at. */
const weeksBack = 4;

/** A session of one of the weeks before, as a custom of the athlete. */
export interface Habit {
  readonly facts: SessionFacts;
  readonly weekday: Weekday;
  /** Undefined when the session says no time. */
  readonly start: WallMinutes | undefined;
  /** 1 for the week before the planned one. */
  readonly weeksAgo: number;
}

/** When the athlete has trained of late. */
export interface Habits {
  /** The newest week first. */
  readonly all: readonly Habit[];
  /** Whether sessions are given times at all. */
  readonly saysTimes: boolean;
  /** The middle length of the sessions of a kind, in minutes. */
  usualMinutes(kind: string): number | undefined;
}

/** The sessions that stand in the four weeks before `week`. */
export function habitsBefore(weeks: WeekReader, week: IsoWeek): Habits {
  const all: Habit[] = [];
  for (let weeksAgo = 1; weeksAgo <= weeksBack; weeksAgo += 1) {
    for (const facts of weeks(addWeeks(week, -weeksAgo)).standing) {
      const weekday = isoWeekday(facts.session.day) as Weekday;
      all.push({ facts, weekday, start: facts.session.entry.span?.value.start, weeksAgo });
    }
  }
  return {
    all,
    saysTimes: all.some(({ start }) => start !== undefined),
    usualMinutes(kind) {
      const lengths = all.flatMap(({ facts }) =>
        facts.session.kind === kind && facts.minutes !== undefined ? [facts.minutes] : [],
      );
      const middle = median(lengths);
      return middle === undefined ? undefined : Math.round(middle);
    },
  };
}
