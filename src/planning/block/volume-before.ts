import { addWeeks, type IsoWeek, isoWeekOf, isoWeekOfDay, weeksInRow } from '../../notation/time/iso-week';
import type { SessionFacts } from '../../training/session-facts';
import type { CheckContext } from '../../training/week-under-check';
import { weeksCompared } from './kind-volumes';

/** Minutes by kind. */
export type MinutesByKind = ReadonlyMap<string, number>;

/** Minutes of all kinds together. */
export function totalOf(minutes: MinutesByKind): number {
  return [...minutes.values()].reduce((sum, one) => sum + one, 0);
}

/** What was done before a block. */
export interface VolumeBefore {
  /** The weeks that were looked at, the earliest first; none in a journal that has only begun. */
  readonly weeks: readonly IsoWeek[];
  /** Minutes of a week in their mean. */
  readonly minutes: MinutesByKind;
}

/** The column that a session is counted in: that of its own kind, or else of what that is like. */
function columnOf({ kinds }: SessionFacts, columns: readonly string[]): string | undefined {
  return kinds.find((kind) => columns.includes(kind));
}

/** Minutes that were done in `week`, by kind; recovery and kinds without a column are left out. */
export function doneByKind(context: CheckContext, week: IsoWeek, columns: readonly string[]): MinutesByKind {
  const minutes = new Map<string, number>();
  for (const facts of context.weeks(week).standing) {
    const column = columnOf(facts, columns);
    if (facts.state !== 'done' || facts.isRecovery || column === undefined) continue;
    minutes.set(column, (minutes.get(column) ?? 0) + (facts.minutes ?? 0));
  }
  return minutes;
}

/** The mean of the last three weeks that are over and lie before `first`, as far as the journal goes back. */
export function volumeBefore(
  context: CheckContext,
  first: IsoWeek,
  columns: readonly string[],
): VolumeBefore {
  const current = isoWeekOf(context.today);
  const until = first < current ? first : current;
  const span = context.journal.span();
  const begun = span && isoWeekOfDay(span.first);
  const weeks = weeksInRow(addWeeks(until, -weeksCompared), weeksCompared).filter(
    (week) => begun !== undefined && week >= begun,
  );
  const done = weeks.map((week) => doneByKind(context, week, columns));
  const minutes = new Map(
    columns.map((column) => [
      column,
      done.reduce((sum, one) => sum + (one.get(column) ?? 0), 0) / Math.max(1, weeks.length),
    ]),
  );
  return { weeks, minutes };
}
