import type { Journal } from '../../journal/journal';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import type { NotEstimable } from '../statistics/estimate';
import { type LoadChange, loadChange, WEEKS_COMPARED } from '../statistics/load-change';
import { type LoadTotal, totalLoad, type WeekLoad, weekLoad } from '../statistics/session-load';
import { type WeekReader, weekReader } from '../training-week';
import { type DayLoad, dayLoads, knownMinutes } from './day-loads';
import { type LoadShare, loadByKind, loadByRegion } from './load-shares';
import { type SessionLoad, sessionLoads } from './session-loads';

/** The load of one week. */
export interface WeekLoadFigures {
  readonly week: IsoWeek;
  /** Whether the week was over on the day that was asked for. */
  readonly isOver: boolean;
  /** Days of the week from the first note of the journal up to the day that was asked for. */
  readonly days: readonly DayLoad[];
  readonly sessions: readonly SessionLoad[];
  /** `n` counts sessions; `unknown` those without a rating or a length. */
  readonly load: LoadTotal;
  readonly minutes: number;
  /** Past sessions that nobody ticked: they count as not done. */
  readonly unmarked: number;
  /** Mean, monotony and strain of the seven days; refused while the week is not whole. */
  readonly spread: WeekLoad | NotEstimable<'too-few-days'>;
  /** Against the mean of the three weeks before; the running week is compared as far as it has come. */
  readonly change: LoadChange | NotEstimable<'too-few-weeks' | 'unknown-loads' | 'no-previous-load'>;
  readonly byKind: readonly LoadShare[];
  readonly byRegion: readonly LoadShare[];
}

/** What {@link weekLoads} is worked out for. */
export interface WeekLoadsOptions {
  readonly today: IsoDate;
  /** First and last week, both included. */
  readonly first: IsoWeek;
  readonly last: IsoWeek;
  /** The reader that already read the journal, when there is one. */
  readonly weeks?: WeekReader;
}

type PlainWeek = Omit<WeekLoadFigures, 'change'>;

function plainWeek(week: IsoWeek, weeks: WeekReader, begun: number, today: number): PlainWeek {
  const monday = mondayOf(week);
  const { standing } = weeks(week);
  const past = standing.filter(({ session }) => session.day <= today);
  const sessions = sessionLoads(past);
  const days = dayLoads(sessions, Math.max(monday, begun), Math.min(monday + 6, today));
  return {
    week,
    isOver: monday + 6 < today,
    days,
    sessions,
    load: totalLoad(sessions.map(({ load }) => load)),
    minutes: knownMinutes(sessions),
    unmarked: past.filter(({ state }) => state === 'overdue').length,
    spread: weekLoad(days.map(({ load }) => load.total)),
    byKind: loadByKind(sessions),
    byRegion: loadByRegion(sessions),
  };
}

/**
 * The loads of the weeks `first` to `last` as they are on the day `today`. Weeks before the first note of the journal
 * are no rest weeks: they are left out, and a week that the journal begins in is not whole.
 */
export function weekLoads(journal: Journal, options: WeekLoadsOptions): readonly WeekLoadFigures[] {
  const span = journal.span();
  if (!span) return [];
  const weeks = options.weeks ?? weekReader(journal, options.today);
  const today = dayNumber(options.today);
  const begun = isoWeekOfDay(span.first);
  const last = options.last < isoWeekOf(options.today) ? options.last : isoWeekOf(options.today);
  const before = addWeeks(options.first, -WEEKS_COMPARED);
  const all: PlainWeek[] = [];
  for (let week = before < begun ? begun : before; week <= last; week = addWeeks(week, 1)) {
    all.push(plainWeek(week, weeks, span.first, today));
  }
  return all
    .map((one, index) => ({
      ...one,
      change: loadChange(
        one.load.total,
        all
          .slice(Math.max(0, index - WEEKS_COMPARED), index)
          // A week that was not whole is no measure for others.
          .map(({ load, spread }) => (spread.status === 'estimated' ? load.total : undefined)),
      ),
    }))
    .filter(({ week }) => week >= options.first);
}
