import { type DayNumber, dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../../notation/time/iso-week';
import type { LoadPageData, ShareChartView } from '../../pages/load-page-data';
import type { TableView } from '../../pages/page-parts';
import {
  type AdherenceFigures,
  adherenceFigures,
  type TimeOfDay,
} from '../../training/adherence/adherence-figures';
import type { AdherenceShare } from '../../training/adherence/adherence-share';
import { type BlockWeek, blockWeek } from '../../training/adherence/block-week';
import { type Slide, type SlideReason, slide } from '../../training/adherence/slide';
import { latestBreak } from '../../training/adherence/training-break';
import { recentPlannedSessions, WEEKS_OF_ADHERENCE } from '../../training/history-rules/slipping';
import type { NotEstimable } from '../../training/statistics/estimate';
import type { CheckContext } from '../../training/week-under-check';
import { type PageContext, percentInWords, say } from '../page/page-context';
import { refusalInWords } from '../page/refusal-words';

/** Rarer false alarms are not counted out. */
const rareEnough = 1000;

function shareCells(own: AdherenceShare, context: PageContext): readonly string[] {
  const { share, done, n, excused, unmarked, reasons } = own;
  const isKnown = !('status' in share);
  return [
    say(context, '{0} of {1}', done, n),
    isKnown ? percentInWords(context, share.proportion) : say(context, 'nothing planned that counts'),
    isKnown
      ? say(context, '{0} to {1}', percentInWords(context, share.lower), percentInWords(context, share.upper))
      : '',
    context.words.number(excused, 0),
    context.words.number(unmarked, 0),
    reasons.map(({ reason, count }) => say(context, '{0} {1}', reason, count)).join(', '),
  ];
}

function table(
  caption: string,
  first: string,
  groups: readonly (AdherenceShare & { readonly name: string })[],
  context: PageContext,
): TableView {
  return {
    caption,
    head: [
      first,
      say(context, 'Done'),
      say(context, 'Share'),
      say(context, '95 %'),
      say(context, 'Excused'),
      say(context, 'Not marked'),
      say(context, 'Reasons'),
    ],
    rows: groups.map((group) => ({ cells: [group.name, ...shareCells(group, context)] })),
  };
}

function timeName(time: TimeOfDay, context: PageContext): string {
  switch (time) {
    case 'morning':
      return say(context, 'morning, before 12:00');
    case 'afternoon':
      return say(context, 'afternoon, before 17:00');
    case 'evening':
      return say(context, 'evening');
    default:
      return say(context, 'no time given');
  }
}

/** 2024-01-01 was a Monday. */
const anyMonday = dayNumber('2024-01-01' as IsoDate);

function tables(figures: AdherenceFigures, context: PageContext): readonly TableView[] {
  const { dates } = context.words;
  const weekName = (key: string): string => dates.day(isoDate(mondayOf(key as IsoWeek)), context.today);
  return [
    table(
      say(context, 'Done of planned by week ({0})', figures.byWeek.length),
      say(context, 'Week of'),
      [...figures.byWeek].reverse().map((one) => ({ ...one, name: weekName(one.key) })),
      context,
    ),
    table(
      say(context, 'Done of planned by month'),
      say(context, 'Month'),
      [...figures.byMonth].reverse().map((one) => ({ ...one, name: one.key })),
      context,
    ),
    table(
      say(context, 'Done of planned by kind'),
      say(context, 'Kind'),
      figures.byKind.map((one) => ({ ...one, name: one.key })),
      context,
    ),
    table(
      say(context, 'Done of planned by weekday'),
      say(context, 'Weekday'),
      figures.byWeekday.map((one) => ({ ...one, name: dates.weekday(isoDate(anyMonday + one.key - 1)) })),
      context,
    ),
    table(
      say(context, 'Done of planned by time of day'),
      say(context, 'Time of day'),
      figures.byTimeOfDay.map((one) => ({ ...one, name: timeName(one.key, context) })),
      context,
    ),
  ];
}

function chartOf({ byWeek }: AdherenceFigures, context: PageContext): ShareChartView | undefined {
  const weeks = byWeek.flatMap(({ key, share, done, n }) => {
    if ('status' in share) return [];
    const monday = mondayOf(key as IsoWeek);
    return [
      {
        monday,
        share: share.proportion,
        lower: share.lower,
        upper: share.upper,
        text: say(
          context,
          'Week of {0}: {1} of {2} done',
          context.words.dates.day(isoDate(monday), context.today),
          done,
          n,
        ),
      },
    ];
  });
  if (weeks.length === 0) return undefined;
  return {
    label: say(
      context,
      'Chart of the share of planned sessions done in each of {0} weeks, with its interval. The same figures stand in the table below.',
      weeks.length,
    ),
    weeks,
  };
}

function allSentence({ all }: AdherenceFigures, context: PageContext): string {
  const { share, done, n, excused } = all;
  const apart =
    excused === 0 ? '' : say(context, ' Excused, for reasons from outside, and counted apart: {0}.', excused);
  return 'status' in share
    ? say(context, 'No planned session lies in the past yet.{0}', apart)
    : say(
        context,
        'In the last {0} weeks: {1} of {2} planned sessions done, {3} (95 %: {4} to {5}).{6}',
        WEEKS_OF_ADHERENCE,
        done,
        n,
        percentInWords(context, share.proportion),
        percentInWords(context, share.lower),
        percentInWords(context, share.upper),
        apart,
      );
}

function slideSentence(found: Slide | NotEstimable<SlideReason>, context: PageContext): string {
  if (found.status === 'not-estimable') {
    return say(context, 'Whether fewer are done lately: {0}.', refusalInWords(found, context));
  }
  const often = found.sessionsToFalseAlarm;
  const chance =
    often > rareEnough
      ? say(context, 'By chance alone that would be said less than once in {0} sessions.', rareEnough)
      : say(context, 'By chance alone that would be said about once in {0} sessions.', Math.round(often));
  const usual = percentInWords(context, found.usual.proportion);
  return found.isSliding
    ? say(
        context,
        'Fewer done lately: {0} of the last {1}, usually {2} ({3} sessions). A smaller week may be easier to keep. {4}',
        found.recent.done,
        found.recent.n,
        usual,
        found.usual.n,
        chance,
      )
    : say(
        context,
        'No drop shows beside your usual {0} ({1} sessions): the score stands at {2}, and {3} would tell of one. {4}',
        usual,
        found.usual.n,
        found.score,
        found.limit,
        chance,
      );
}

function blockSentence(block: BlockWeek | undefined, context: PageContext): readonly string[] {
  if (!block) return [];
  const date = context.words.dates.day(block.began, context.today);
  const count =
    block.by === 'goal'
      ? say(
          context,
          'This is week {0} of the block that began with your latest goal, on {1}.',
          block.week,
          date,
        )
      : say(context, 'This is week {0} since you came back, on {1}.', block.week, date);
  return block.reviewEarly
    ? [say(context, '{0} Many slow down about now: a look back is due.', count)]
    : [count];
}

/** Done of planned by week with its interval, whether it drops, and the same in tables. */
export function adherencePart(check: CheckContext, context: PageContext): LoadPageData['adherence'] {
  const sessions = recentPlannedSessions(check);
  const today: DayNumber = check.todayNumber;
  const title = say(context, 'Kept');
  if (sessions.length === 0) {
    return {
      title,
      sentences: [],
      notice: say(context, 'Not enough notes yet: no planned session lies in the past.'),
      tables: [],
    };
  }
  const figures = adherenceFigures(sessions);
  const chart = chartOf(figures, context);
  return {
    title,
    sentences: [
      allSentence(figures, context),
      slideSentence(slide(sessions, today), context),
      ...blockSentence(blockWeek(check.plan, check.today, latestBreak(sessions, today)), context),
    ],
    ...(chart ? { chart } : {}),
    tables: tables(figures, context),
  };
}
