import type { DayNumber } from '../../notation/time/iso-date';
import type { LocalMinutes } from './calendar-time';
import { type DayFields, dayFields, weekNumber } from './day-fields';
import type { OrdinalWeekday, RecurrenceRule } from './recurrence-rule';

const minutesADay = 1440;

/** Whether `value`, counted from the front or from the end of `length`, is among `wanted`. */
function isAmong(wanted: readonly number[], value: number, length: number): boolean {
  return wanted.includes(value) || wanted.includes(value - length - 1);
}

function isMultiple(index: number, interval: number): boolean {
  return index % interval === 0;
}

/** Whole weeks, beginning on `weekStart`, since the first such week after 1970 began. */
function weekIndex(day: DayNumber, weekStart: number): number {
  // 1970-01-01 was a Thursday.
  return Math.floor((day + 4 - weekStart) / 7);
}

/** The days of a rule that begins on the day `first`, told one day at a time. */
function dayFilter(rule: RecurrenceRule, first: DayFields): (day: DayFields) => boolean {
  const { frequency, interval, weekStart, months, weeks, yearDays, monthDays, weekdays } = rule;
  const isYearly = frequency === 'YEARLY';
  const inMonth = frequency === 'MONTHLY' || months !== undefined;
  const firstWeek = weekIndex(first.day, weekStart);

  const inInterval = (day: DayFields): boolean => {
    switch (frequency) {
      case 'YEARLY':
        return isMultiple(day.year - first.year, interval);
      case 'MONTHLY':
        return isMultiple(day.year * 12 + day.month - first.year * 12 - first.month, interval);
      case 'WEEKLY':
        return isMultiple(weekIndex(day.day, weekStart) - firstWeek, interval);
      case 'DAILY':
        return isMultiple(day.day - first.day, interval);
      default:
        return true;
    }
  };
  const isOrdinal = (day: DayFields, ordinal: number): boolean => {
    const number = inMonth ? day.monthDay : day.yearDay;
    const length = inMonth ? day.monthLength : day.yearLength;
    return ordinal > 0
      ? Math.ceil(number / 7) === ordinal
      : Math.ceil((length - number + 1) / 7) === -ordinal;
  };
  const isWeekday = (day: DayFields, { weekday, ordinal }: OrdinalWeekday): boolean =>
    weekday === day.weekday && (ordinal === undefined || isOrdinal(day, ordinal));
  const namedWeekdays = new Set(weekdays?.map(({ weekday }) => weekday));
  /** What a rule leaves open it takes from its first day. */
  const isLikeFirst = (day: DayFields): boolean => {
    if (weekdays || monthDays || yearDays) return true;
    if (frequency === 'WEEKLY' || (isYearly && weeks)) return day.weekday === first.weekday;
    if (frequency === 'MONTHLY') return day.monthDay === first.monthDay;
    return (
      !isYearly || (day.monthDay === first.monthDay && (months !== undefined || day.month === first.month))
    );
  };
  const isInWeeks = (day: DayFields, wanted: readonly number[]): boolean => {
    const number = weekNumber(day, weekStart);
    return isAmong(wanted, number.week, number.weeks);
  };

  // The cheap questions that most days fail come first.
  return (day) =>
    (!weekdays || namedWeekdays.has(day.weekday)) &&
    inInterval(day) &&
    (!weekdays || weekdays.some((one) => isWeekday(day, one))) &&
    isLikeFirst(day) &&
    (!months || months.includes(day.month)) &&
    (!monthDays || isAmong(monthDays, day.monthDay, day.monthLength)) &&
    (!yearDays || isAmong(yearDays, day.yearDay, day.yearLength)) &&
    (!weeks || isInWeeks(day, weeks));
}

/** The times of day, in minutes, at which a rule that begins at `first` occurs on a day that it allows. */
function timesOfDay(rule: RecurrenceRule, first: LocalMinutes): (day: DayNumber) => readonly number[] {
  const { frequency, interval } = rule;
  const firstDay = Math.floor(first / minutesADay);
  const firstSecond = Math.round((first - firstDay * minutesADay) * 60);
  const combined = (hours: readonly number[], minutes: readonly number[], seconds: readonly number[]) =>
    hours
      .flatMap((hour) =>
        minutes.flatMap((minute) => seconds.map((second) => hour * 60 + minute + second / 60)),
      )
      .sort((a, b) => a - b);
  const hours = rule.hours ?? [Math.floor(firstSecond / 3600)];
  const minutes = rule.minutes ?? [Math.floor(firstSecond / 60) % 60];
  const seconds = rule.seconds ?? [firstSecond % 60];
  const step = { SECONDLY: 1, MINUTELY: 60, HOURLY: 3600 }[frequency as string];
  if (step === undefined) {
    const times = combined(hours, minutes, seconds);
    return () => times;
  }
  const perDay = 86_400 / step;
  const beginning = Math.floor(firstSecond / step);
  return (day) => {
    const times: number[] = [];
    const sinceFirst = (day - firstDay) * perDay - beginning;
    const skipped = ((sinceFirst % interval) + interval) % interval;
    for (let index = skipped === 0 ? 0 : interval - skipped; index < perDay; index += interval) {
      const second = index * step;
      const hour = Math.floor(second / 3600);
      const minute = Math.floor(second / 60) % 60;
      if (rule.hours && !rule.hours.includes(hour)) continue;
      if (frequency !== 'HOURLY' && rule.minutes && !rule.minutes.includes(minute)) continue;
      if (frequency === 'SECONDLY' && rule.seconds && !rule.seconds.includes(second % 60)) continue;
      times.push(
        ...combined(
          [hour],
          frequency === 'HOURLY' ? minutes : [minute],
          frequency === 'SECONDLY' ? [second % 60] : seconds,
        ),
      );
    }
    return times;
  };
}

/** First and last day of the rule's period (year, month, week or day) in which `day` lies. */
function periodAround(rule: RecurrenceRule, day: DayFields): readonly [DayNumber, DayNumber] {
  switch (rule.frequency) {
    case 'YEARLY':
      return [day.day - day.yearDay + 1, day.day - day.yearDay + day.yearLength];
    case 'MONTHLY':
      return [day.day - day.monthDay + 1, day.day - day.monthDay + day.monthLength];
    case 'WEEKLY': {
      const first = day.day - ((day.weekday - rule.weekStart + 7) % 7);
      return [first, first + 6];
    }
    default:
      return [day.day, day.day];
  }
}

/** Tells at which local times a rule occurs on the days asked for. */
export interface Recurrence {
  /** Local start times on `days`, which stand in order, without those before the first start; in order. */
  on(days: readonly DayFields[]): readonly LocalMinutes[];
}

/**
 * Follows `rule` from its first start on. Each day is asked by itself whether the rule allows it, so that a rule
 * which began many years ago costs no more than one of yesterday, and one that nothing satisfies does no harm. Only
 * a rule with a `COUNT` is counted from its start, once.
 *
 * The first start counts as an occurrence whether the rule meets it or not; it is given only if the rule does.
 * `UNTIL` is left to the caller, who knows the clock.
 */
export function recurrence(rule: RecurrenceRule, first: LocalMinutes): Recurrence {
  const firstDay = Math.floor(first / minutesADay);
  const [firstFields] = dayFields(firstDay, firstDay);
  const isAllowed: (day: DayFields) => boolean = firstFields ? dayFilter(rule, firstFields) : () => false;
  const times = timesOfDay(rule, first);
  const periods = new Map<DayNumber, ReadonlySet<LocalMinutes>>();

  const plainlyOn = (day: DayFields): readonly LocalMinutes[] =>
    isAllowed(day) ? times(day.day).map((time) => day.day * minutesADay + time) : [];

  /** What `BYSETPOS` leaves of the period around a day. */
  const chosenAround = (day: DayFields, positions: readonly number[]): ReadonlySet<LocalMinutes> => {
    const [from, to] = periodAround(rule, day);
    let chosen = periods.get(from);
    if (!chosen) {
      const all = dayFields(from, to).flatMap(plainlyOn);
      chosen = new Set(all.filter((_, index) => isAmong(positions, index + 1, all.length)));
      periods.set(from, chosen);
    }
    return chosen;
  };

  /** Adds the occurrences of a day; most days have none, and must cost next to nothing. */
  const addDay = (day: DayFields, found: LocalMinutes[]): void => {
    if (day.day < firstDay || !isAllowed(day)) return;
    const chosen = rule.positions && chosenAround(day, rule.positions);
    for (const time of times(day.day)) {
      const local = day.day * minutesADay + time;
      if (local >= first && (!chosen || chosen.has(local))) found.push(local);
    }
  };
  const onDays = (days: readonly DayFields[]): LocalMinutes[] => {
    const found: LocalMinutes[] = [];
    for (const day of days) addDay(day, found);
    return found;
  };

  const { count } = rule;
  if (count === undefined) return { on: onDays };

  // How far the occurrences have been counted, and the last of them once it is reached.
  let counted = 0;
  let nextDay = firstDay;
  let last = Number.POSITIVE_INFINITY;
  const countTo = (day: DayNumber) => {
    if (last < Number.POSITIVE_INFINITY || day < nextDay) return;
    for (const fields of dayFields(nextDay, day)) {
      const found = onDays([fields]);
      if (fields.day === firstDay && found[0] !== first) counted += 1;
      if (counted + found.length >= count) {
        last = found[count - counted - 1] ?? first;
        return;
      }
      counted += found.length;
    }
    nextDay = day + 1;
  };
  return {
    on(days) {
      countTo(days.at(-1)?.day ?? firstDay);
      return onDays(days).filter((local) => local <= last);
    },
  };
}
