import type { Weekday } from '../../notation/entries';
import { addMonths, type IsoMonth, isoMonthOf, parseIsoMonth } from '../../notation/time/iso-month';
import { formatTime } from '../../notation/time/wall-clock';
import type {
  FromMonthPage,
  MonthDayView,
  MonthPageData,
  MonthPageState,
  MonthSessionView,
  MonthWeekView,
} from '../../pages/month-page-data';
import type { TableView } from '../../pages/page-parts';
import {
  type MonthDay,
  type MonthFacts,
  type MonthSession,
  type MonthWeek,
  monthFacts,
} from '../../training/month/month-facts';
import { weekClauses } from '../../training/month/week-clauses';
import { sessionPlace } from '../../training/session-place';
import { checkContext } from '../../training/week-under-check';
import { minutesInWords } from '../../training/wording';
import { usableLanguage } from '../date-words';
import type { OpenJournal } from '../open-journal';
import { commonTexts } from '../page/common-texts';
import { dayInWords, type PageContext, pagePlace, percentInWords, say } from '../page/page-context';
import { isRecord, readCommonMessage } from '../page/read-message';
import { reasonInWords } from '../reason-words';
import type { Words } from '../words';
import { clausesInWords, dayNumberName, markMeanings, monthName, weekdayNames } from './month-words';

/** What the page needs of a journal that is open. */
export type JournalOfMonthPage = Pick<OpenJournal, 'id' | 'title' | 'journal' | 'today' | 'zone'>;

function stateWords({ mark, reason, movedTo }: MonthSession, context: PageContext): string {
  switch (mark) {
    case 'kept':
      return say(context, 'kept');
    case 'unmarked':
      return say(context, 'not marked');
    case 'moved':
      return movedTo === undefined
        ? say(context, 'moved')
        : say(context, 'moved to {0}', context.words.dates.day(movedTo, context.today));
    case 'planned':
      return say(context, 'planned');
    default:
      return say(context, 'left out: {0}', reasonInWords(reason ?? 'other', context.words));
  }
}

function sessionView(one: MonthSession, context: PageContext): MonthSessionView {
  const { session } = one.facts;
  const start = session.entry.span?.value.start;
  return {
    mark: one.mark,
    kind: session.kind,
    state: [...(start === undefined ? [] : [formatTime(start)]), stateWords(one, context)].join(', '),
    place: pagePlace(sessionPlace(session)),
  };
}

function dayView(day: MonthDay, context: PageContext, language: string): MonthDayView {
  const date = dayInWords(context, day.date);
  return {
    date: day.date,
    number: dayNumberName(day.day, day.isInMonth, language),
    label: day.when === 'today' ? say(context, '{0}, today', date) : date,
    isInMonth: day.isInMonth,
    isToday: day.when === 'today',
    ...(day.note === undefined ? {} : { note: { note: day.note, range: { start: 0, end: 0 } } }),
    words: [
      ...day.events.map(({ name }) => say(context, 'event: {0}', name)),
      ...(day.isBusy ? [say(context, 'busy')] : []),
      ...(day.isRest ? [say(context, 'rest')] : []),
    ],
    sessions: day.sessions.map((one) => sessionView(one, context)),
  };
}

function weekView(week: MonthWeek, isBest: boolean, context: PageContext, language: string): MonthWeekView {
  const name = context.words.dates.day(week.first, context.today);
  return {
    label: isBest ? say(context, 'Week of {0}, the best:', name) : say(context, 'Week of {0}:', name),
    facts: clausesInWords(weekClauses(week, true), context.words),
    days: week.days.map((day) => dayView(day, context, language)),
  };
}

function keptSentence({ kept }: MonthFacts, context: PageContext): string {
  const { share, done, n, excused } = kept;
  const apart =
    excused === 0 ? '' : say(context, ' Left out for reasons from outside, and counted apart: {0}.', excused);
  if ('status' in share) return say(context, 'No planned session of this month lies in the past.{0}', apart);
  return say(
    context,
    'Kept: {0} of {1} planned sessions, {2} (95 %: {3} to {4}, as for independent sessions).{5}',
    done,
    n,
    percentInWords(context, share.proportion),
    percentInWords(context, share.lower),
    percentInWords(context, share.upper),
    apart,
  );
}

function bestSentence({ best }: MonthFacts, context: PageContext): readonly string[] {
  if (!best) return [];
  const name = context.words.dates.day(best.first, context.today);
  const template =
    best.done === 1
      ? 'Best week: that of {0}, {1} session kept, {2}.'
      : 'Best week: that of {0}, {1} sessions kept, {2}.';
  return [say(context, template, name, best.done, minutesInWords(best.minutesDone))];
}

function sentences(facts: MonthFacts, context: PageContext): readonly string[] {
  const { minutesDone, ahead, restDays, moved } = facts;
  return [
    keptSentence(facts, context),
    say(
      context,
      'Trained: {0}. Still to come: {1}. Moved: {2}. Days of rest: {3}.',
      minutesInWords(minutesDone),
      ahead,
      moved,
      restDays,
    ),
    ...bestSentence(facts, context),
  ];
}

function kindTable({ byKind }: MonthFacts, context: PageContext): TableView {
  return {
    caption: say(context, 'The month by kind'),
    head: [
      say(context, 'Kind'),
      say(context, 'Kept'),
      say(context, 'Left out'),
      say(context, 'Reason from outside'),
      say(context, 'Not marked'),
      say(context, 'To come'),
      say(context, 'Trained'),
    ],
    rows: byKind.map(({ kind, kept, ahead, minutesDone }) => ({
      cells: [
        kind,
        say(context, '{0} of {1}', kept.done, kept.n),
        ...[kept.missed, kept.excused, kept.unmarked, ahead].map((count) => context.words.number(count, 0)),
        minutesInWords(minutesDone),
      ],
    })),
  };
}

/**
 * All that the page of a month shows of a journal.
 * @param asked the month; the one of today when left out
 * @param language BCP 47 tag of the editor's language
 * @param weekStart the weekday that the rows begin with
 */
export function monthPageData(
  open: JournalOfMonthPage,
  asked: IsoMonth | undefined,
  words: Words,
  language: string,
  weekStart: Weekday = 1,
): MonthPageData {
  const today = open.today();
  const context: PageContext = { words, today };
  const thisMonth = isoMonthOf(today);
  const month = asked ?? thisMonth;
  const facts = monthFacts(checkContext(open.journal, { today, zone: open.zone() }), month, weekStart);
  const name = monthName(month, language);
  const [previous, next] = [addMonths(month, -1), addMonths(month, 1)];
  return {
    journal: open.id,
    title: say(context, 'Month: {0}', open.title),
    locale: usableLanguage(language),
    month,
    isThisMonth: month === thisMonth,
    today,
    heading: say(context, '{0}, {1}', open.title, name),
    previous: { month: previous, name: monthName(previous, language) },
    next: { month: next, name: monthName(next, language) },
    weekdays: weekdayNames(weekStart, language),
    weeks: facts.weeks.map((week) => weekView(week, week === facts.best, context, language)),
    sentences: sentences(facts, context),
    table: kindTable(facts, context),
    legend: markMeanings(words),
    texts: {
      ...commonTexts(context),
      thisMonth: say(context, 'This month'),
      today: say(context, 'today'),
      print: say(context, 'Print'),
      grid: name,
      keys: say(
        context,
        'Arrow keys move between days, Page Up and Page Down between months, Tab to the sessions of a day. Enter opens the note.',
      ),
      week: say(context, 'Week'),
      noNote: say(context, 'There is no note of this day'),
    },
  };
}

/** Months that a page may turn to: calendars of other centuries are a slip. */
const [earliest, latest] = ['1900-01', '2199-12'];

/** A month that can be shown, or `undefined`. */
export function readMonth(value: unknown): IsoMonth | undefined {
  const month = typeof value === 'string' ? parseIsoMonth(value) : undefined;
  return month !== undefined && month >= earliest && month <= latest ? month : undefined;
}

/** What a page asked for, or `undefined` when it is nothing that it may ask for. */
export function readMonthPageMessage(value: unknown): FromMonthPage | undefined {
  const common = readCommonMessage(value);
  if (common || !isRecord(value)) return common;
  if (value.type === 'print') return { type: 'print' };
  if (value.type !== 'month') return undefined;
  if (value.month === undefined) return { type: 'month' };
  const month = readMonth(value.month);
  return month === undefined ? undefined : { type: 'month', month };
}

/** Which journal and month a page that was kept showed. */
export function readMonthPageState(value: unknown): MonthPageState | undefined {
  if (!isRecord(value) || typeof value.journal !== 'string') return undefined;
  const month = readMonth(value.month);
  return { journal: value.journal, ...(month === undefined ? {} : { month }) };
}
