import { type DayNumber, isoDate } from '../../notation/time/iso-date';
import type { WallMinutes } from '../../notation/time/wall-clock';
import { type InstantMinutes, instantOf } from '../../notation/time/zoned-time';

/** Turns days and the clock of a zone into the minutes of elapsed time in which a solver counts. */
export interface ClockAxis {
  /** Minutes from the midnight with which `firstDay` begins to the moment at which the clock of `day` shows `minutes`. */
  at(day: DayNumber, minutes: WallMinutes): number;
  /** The same for a moment that is known already; a part of a minute counts as a whole one. */
  ofInstant(instant: InstantMinutes): number;
  /** Days from `firstDay` to `day`; negative before it. */
  dayIndex(day: DayNumber): number;
}

const minutesADay = 1440;

/** The axis that begins with `firstDay` in `zone`. A clock change makes a day an hour shorter or longer. */
export function clockAxis(firstDay: DayNumber, zone: string): ClockAxis {
  const midnights = new Map<DayNumber, InstantMinutes>();
  const midnight = (day: DayNumber): InstantMinutes => {
    const known = midnights.get(day) ?? instantOf(isoDate(day), 0, zone);
    midnights.set(day, known);
    return known;
  };
  const origin = midnight(firstDay);
  return {
    at(day, minutes) {
      const onDay = day + Math.floor(minutes / minutesADay);
      const clock = minutes - (onDay - day) * minutesADay;
      // Asking the zone is slow; on all but two days a year the clock runs evenly from midnight to midnight.
      const isEven = midnight(onDay + 1) - midnight(onDay) === minutesADay;
      const instant = isEven ? midnight(onDay) + clock : instantOf(isoDate(onDay), clock, zone);
      return Math.ceil(instant - origin);
    },
    ofInstant: (instant) => Math.ceil(instant - origin),
    dayIndex: (day) => day - firstDay,
  };
}
