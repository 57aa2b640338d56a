import type { Journal, Need } from '../journal/journal';
import type { PerWeek } from '../notation/entries';
import type { IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import type { LengthOfTime } from '../notation/time/length-of-time';
import { askedOfWeek } from './block/asked-in-week';
import type { SessionFacts } from './session-facts';
import { weekReader } from './training-week';
import { totalMinutes } from './week-summary';

/** Sessions and their minutes together. */
export interface Volume {
  readonly sessions: number;
  readonly minutes: number;
}

/** What a need asks of a week, and what the week gives it. */
export interface NeedVolume {
  readonly need: Need;
  /** Of this week, in a block what its table says. */
  readonly asked: PerWeek;
  readonly length?: LengthOfTime;
  readonly done: Volume;
  /** Done, planned and overdue together. */
  readonly standing: Volume;
}

function volumeOf(sessions: readonly SessionFacts[]): Volume {
  return { sessions: sessions.length, minutes: totalMinutes(sessions) };
}

/** The volume of `week` against each need of it, needs of the nearest goal first. */
export function weekVolume(
  journal: Journal,
  week: IsoWeek,
  today: IsoDate,
  weeks = weekReader(journal, today),
): readonly NeedVolume[] {
  const { standing, needs } = weeks(week);
  return needs.map((need) => {
    const counting = standing.filter((one) => one.countsFor.includes(need));
    const { perWeek, length } = askedOfWeek(journal.plan, need, week);
    return {
      need,
      asked: perWeek,
      ...(length ? { length } : {}),
      done: volumeOf(counting.filter((one) => one.state === 'done')),
      standing: volumeOf(counting),
    };
  });
}
