import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import { plannedSessions } from '../../training/adherence/planned-sessions';
import { latestBreak } from '../../training/adherence/training-break';
import { returnRamp } from '../../training/statistics/return-ramp';
import { type WeekReader, weekReader } from '../../training/training-week';
import { message } from '../../training/wording';
import { planNextWeek } from '../next-week';
import type { NoteChange } from '../note-change';
import { journalWithSmallerWeek, smallerWeekSize, trainingDone } from '../smaller-week';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

/** Weeks whose done sessions say what a week usually holds. No source. */
const usualWeeks = 26;

/** Training sessions done in each of the `count` weeks before `week`. */
function doneBefore(weeks: WeekReader, week: IsoWeek, count: number): readonly number[] {
  return Array.from({ length: count }, (_, ago) => trainingDone(weeks, addWeeks(week, -ago - 1)));
}

/** The notes of next week, laid out as ever but for at most `sessions` of training. */
function smallerWeek({ journal, options }: ToMend, week: IsoWeek, sessions: number): readonly NoteChange[] {
  const smaller = journalWithSmallerWeek(journal, week, sessions);
  const plan = planNextWeek(smaller, { ...options, week });
  return plan.placed.length === 0 ? [] : plan.changes;
}

/**
 * Writes next week with as many training sessions as were done in a week of late, one at the least and one fewer than
 * asked at the most. Nothing that stands in the week is taken away.
 */
export const smallerNextWeek: RemedyMaker = function* (mend): Generator<Remedy> {
  const { journal, options } = mend;
  const week = addWeeks(isoWeekOf(options.today), 1);
  const size = smallerWeekSize(journal, options.today, week);
  if (!size) return;
  const { sessions, asked } = size;
  yield {
    name: 'smaller-next-week',
    title: message('Write next week smaller: {0} training sessions in place of {1}', sessions, asked),
    changes: smallerWeek(mend, week, sessions),
    preferred: false,
  };
};

/** 1 for the first week back after the break, counted for the coming week. */
function weekOfReturn(backOn: IsoDate | undefined, week: IsoWeek): number {
  if (backOn === undefined) return 1;
  return (mondayOf(week) - mondayOf(isoWeekOf(backOn))) / 7 + 1;
}

/**
 * Writes next week as a week of a return after a break of two weeks or more: the highest week of the last half year,
 * cut by the percentages of `returnRamp`, which are borrowed from another sport.
 */
export const rampBack: RemedyMaker = function* (mend): Generator<Remedy> {
  const { journal, options } = mend;
  const { today } = options;
  const weeks = weekReader(journal, today);
  const current = isoWeekOf(today);
  const week = addWeeks(current, 1);
  const last = dayNumber(today);
  const first = Math.max(mondayOf(addWeeks(current, -usualWeeks)), journal.span()?.first ?? last);
  const found = latestBreak(plannedSessions(weeks, first, last), last);
  if (!found) return;
  const beforeBreak = isoWeekOfDay(dayNumber(found.lastDone) + 7);
  const usualMaximum = Math.max(0, ...doneBefore(weeks, beforeBreak, usualWeeks));
  const step = returnRamp(usualMaximum).weeks[weekOfReturn(found.backOn, week) - 1];
  if (!step || step.cutPercent === 0) return;
  const sessions = Math.max(1, Math.floor(step.limit));
  yield {
    name: 'ramp-back',
    title: message(
      'Come back in steps: write next week with {0} training sessions, {1} % less than your fullest week (borrowed: Caterisano and others, 2019)',
      sessions,
      step.cutPercent,
    ),
    changes: smallerWeek(mend, week, sessions),
    preferred: false,
  };
};
