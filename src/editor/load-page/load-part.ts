import { isoDate } from '../../notation/time/iso-date';
import { addWeeks, isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import type { LoadChartView, LoadPageData } from '../../pages/load-page-data';
import type { TableView } from '../../pages/page-parts';
import type { LoadShare } from '../../training/load/load-shares';
import { type WeekLoadFigures, weekLoads } from '../../training/load/week-loads';
import { type WorkloadRatios, workloadRatios } from '../../training/load/workload-ratios';
import type { CheckContext } from '../../training/week-under-check';
import { minutesInWords } from '../../training/wording';
import { loadInWords } from '../page/load-words';
import { type PageContext, say } from '../page/page-context';
import { refusalInWords } from '../page/refusal-words';

/** Weeks that are drawn: a block of training. No source. */
export const WEEKS_OF_LOAD = 12;

/** Kinds with a part of their own in a bar; the rest of them share one. */
const mostKinds = 5;

function weekOf(week: WeekLoadFigures['week'], { words, today }: PageContext): string {
  return words.dates.day(isoDate(mondayOf(week)), today);
}

function signedPercent(percent: number, { words }: PageContext): string {
  const rounded = Math.round(percent);
  return `${rounded > 0 ? '+' : ''}${words.number(rounded, 0)}%`;
}

function sharesInWords(shares: readonly LoadShare[], context: PageContext): string {
  return shares
    .map(({ name, load }) =>
      say(context, '{0} {1}', name ?? say(context, 'no region'), loadInWords(load, context)),
    )
    .join(', ');
}

/** Kinds in order of their known load, the greatest first. */
function kindsOf(weeks: readonly WeekLoadFigures[]): readonly string[] {
  const totals = new Map<string, number>();
  for (const { name = '', load } of weeks.flatMap(({ byKind }) => byKind)) {
    totals.set(name, (totals.get(name) ?? 0) + load.knownTotal);
  }
  return [...totals].sort(([, one], [, other]) => other - one).map(([name]) => name);
}

function chartOf(weeks: readonly WeekLoadFigures[], context: PageContext): LoadChartView | undefined {
  const all = kindsOf(weeks);
  if (weeks.every(({ load }) => load.knownTotal === 0)) return undefined;
  const own = all.length > mostKinds ? all.slice(0, mostKinds - 1) : all;
  const rest = all.slice(own.length);
  const known = (week: WeekLoadFigures, kinds: readonly string[]): number =>
    week.byKind
      .filter(({ name }) => name !== undefined && kinds.includes(name))
      .reduce((sum, { load }) => sum + load.knownTotal, 0);
  return {
    label: say(
      context,
      'Chart of the load of the last {0} weeks by kind. The same figures stand in the table below.',
      weeks.length,
    ),
    kinds: [...own, ...(rest.length > 0 ? [say(context, 'other kinds')] : [])],
    weeks: weeks.map((week) => ({
      monday: mondayOf(week.week),
      parts: [...own.map((kind) => known(week, [kind])), ...(rest.length > 0 ? [known(week, rest)] : [])],
      total: `${context.words.number(week.load.knownTotal, 0)}${week.load.unknown > 0 ? '+' : ''}`,
      text: say(
        context,
        'Week of {0}: load {1}',
        weekOf(week.week, context),
        loadInWords(week.load, context),
      ),
    })),
  };
}

function spreadInWords(week: WeekLoadFigures, part: 'monotony' | 'strain', context: PageContext): string {
  if (week.spread.status !== 'estimated') {
    return week.isOver ? refusalInWords(week.spread, context) : say(context, 'not over yet');
  }
  const value = week.spread[part];
  return typeof value === 'number'
    ? context.words.number(value, part === 'monotony' ? 2 : 0)
    : refusalInWords(value, context);
}

function changeInWords({ change, isOver }: WeekLoadFigures, context: PageContext): string {
  if (!isOver) return say(context, 'not over yet');
  return change.status === 'estimated'
    ? signedPercent(change.percent, context)
    : refusalInWords(change, context);
}

function weeksTable(weeks: readonly WeekLoadFigures[], context: PageContext): TableView {
  return {
    caption: say(context, 'Load by week ({0})', weeks.length),
    head: [
      say(context, 'Week of'),
      say(context, 'Load'),
      say(context, 'Sessions'),
      say(context, 'Time'),
      say(context, 'Monotony'),
      say(context, 'Strain'),
      say(context, 'Change'),
    ],
    rows: [...weeks].reverse().map((week) => ({
      cells: [
        weekOf(week.week, context),
        loadInWords(week.load, context),
        context.words.number(week.load.n, 0),
        minutesInWords(week.minutes),
        spreadInWords(week, 'monotony', context),
        spreadInWords(week, 'strain', context),
        changeInWords(week, context),
      ],
    })),
  };
}

function kindsTable(weeks: readonly WeekLoadFigures[], context: PageContext): TableView {
  return {
    caption: say(context, 'Load by kind and week'),
    head: [say(context, 'Week of'), say(context, 'By kind')],
    rows: [...weeks].reverse().map((week) => ({
      cells: [weekOf(week.week, context), sharesInWords(week.byKind, context)],
    })),
  };
}

function regionsTable(weeks: readonly WeekLoadFigures[], context: PageContext): TableView {
  return {
    caption: say(context, 'Load by region and week'),
    head: [say(context, 'Week of'), say(context, 'By region; a session counts for each of its regions')],
    rows: [...weeks].reverse().map((week) => ({
      cells: [weekOf(week.week, context), sharesInWords(week.byRegion, context)],
    })),
  };
}

/** The last whole week in sentences. */
function lastWeekSentences(weeks: readonly WeekLoadFigures[], context: PageContext): readonly string[] {
  const week = weeks.filter(({ isOver }) => isOver).at(-1);
  if (!week) return [say(context, 'No whole week lies behind you yet.')];
  const load = loadInWords(week.load, context);
  const date = weekOf(week.week, context);
  const first = say(
    context,
    'The last whole week, of {0}: load {1} in {2} sessions, {3}.',
    date,
    load,
    week.load.n,
    minutesInWords(week.minutes),
  );
  const { change } = week;
  const second =
    change.status === 'estimated'
      ? say(
          context,
          'Against the mean of the {0} weeks before, {1}: {2}.',
          change.n,
          context.words.number(change.previousMean, 0),
          signedPercent(change.percent, context),
        )
      : say(context, 'No change against the weeks before is given: {0}.', refusalInWords(change, context));
  const spread =
    week.spread.status === 'estimated' && typeof week.spread.monotony === 'number'
      ? [
          say(
            context,
            'Monotony {0} (mean of the seven days over their sample standard deviation), strain {1} (load x monotony).',
            spreadInWords(week, 'monotony', context),
            spreadInWords(week, 'strain', context),
          ),
        ]
      : [];
  return [first, second, ...spread];
}

function unknownSentences(weeks: readonly WeekLoadFigures[], context: PageContext): readonly string[] {
  const count = (of: (week: WeekLoadFigures) => number): number =>
    weeks.reduce((sum, week) => sum + of(week), 0);
  const [unknown, unmarked] = [count(({ load }) => load.unknown), count((week) => week.unmarked)];
  return [
    ...(unknown > 0
      ? [
          say(
            context,
            'Sessions done without a rating or a length in these weeks: {0}. Their load is unknown, not zero: the weeks with a + had at least so much.',
            unknown,
          ),
        ]
      : []),
    ...(unmarked > 0
      ? [
          say(
            context,
            'Past sessions in these weeks that are neither ticked, skipped nor moved: {0}. They have no load, and count as not done.',
            unmarked,
          ),
        ]
      : []),
  ];
}

function ratioSentences(ratios: WorkloadRatios | undefined, context: PageContext): readonly string[] {
  if (!ratios) return [];
  const { rolling, exponential, upTo } = ratios;
  const date = context.words.dates.day(upTo, context.today);
  if (rolling.status !== 'estimated' || exponential.status !== 'estimated') {
    const refused = rolling.status === 'not-estimable' ? rolling : exponential;
    return refused.status === 'not-estimable'
      ? [say(context, 'The last 7 days beside the time before them: {0}.', refusalInWords(refused, context))]
      : [];
  }
  return [
    say(
      context,
      'Up to {0}, a day of the last 7 had {1} times the load of a day of the 21 before ({2} days). With newer days weighing more: {3} times. These ratios describe a change of load, and nothing else.',
      date,
      context.words.number(rolling.ratio, 2),
      rolling.n,
      context.words.number(exponential.ratio, 2),
    ),
  ];
}

/** Week bars by kind, the last whole week, the ratios with what is said against them, and the same in tables. */
export function loadPart(check: CheckContext, context: PageContext): LoadPageData['load'] {
  const last = isoWeekOf(check.today);
  const all = weekLoads(check.journal, {
    today: check.today,
    first: addWeeks(last, 1 - WEEKS_OF_LOAD),
    last,
    weeks: check.weeks,
  });
  const title = say(context, 'Load');
  const weeks = all.some(({ load }) => load.n > 0) ? all : [];
  if (weeks.length === 0) {
    return {
      title,
      sentences: [],
      notice: say(
        context,
        'No session is done yet. The load of a session is its rating x its minutes: {0}',
        '- [x] #session strength 18:30 60min 6/10',
      ),
      tables: [],
    };
  }
  const ratios = workloadRatios(check.journal, check.today, check.weeks);
  const chart = chartOf(weeks, context);
  return {
    title,
    sentences: [
      ...lastWeekSentences(weeks, context),
      ...unknownSentences(weeks, context),
      ...ratioSentences(ratios, context),
    ],
    ...(chart ? { chart } : {}),
    ...(ratios
      ? {
          criticism: {
            title: say(context, 'What is published against such ratios'),
            sentences: ratios.criticism.map((one) => context.words.say(one)),
          },
        }
      : {}),
    tables: [weeksTable(weeks, context), kindsTable(weeks, context), regionsTable(weeks, context)],
  };
}
