import { withoutDirectionMarks } from '../../notation/direction-marks';
import type { Weekday } from '../../notation/entries';
import { firstDateOf, type IsoMonth } from '../../notation/time/iso-month';
import { formatTime } from '../../notation/time/wall-clock';
import { markShapes } from '../../pages/month-page/mark-shapes';
import {
  type MonthDay,
  type MonthFacts,
  type MonthSession,
  type MonthWeek,
  monthFacts,
  type SessionMark,
} from '../../training/month/month-facts';
import { weekClauses } from '../../training/month/week-clauses';
import { checkContext } from '../../training/week-under-check';
import { message, minutesInWords } from '../../training/wording';
import { htmlText } from '../html-text';
import {
  clausesInWords,
  dayNumberName,
  markMeanings,
  monthName,
  weekdayNames,
} from '../month-page/month-words';
import type { JournalOfMonthPage } from '../month-page/page-data';
import { printedPage } from '../printed-page';
import { reasonInWords } from '../reason-words';
import type { Words } from '../words';
import { type Paper, sheetStyle } from './sheet-style';

/** What may stand on the sheet beside kinds, times and marks; all of it is left out unless asked for by name. */
export const sheetExtras = ['name', 'reasons', 'events'] as const;

export type SheetExtra = (typeof sheetExtras)[number];

/** What is printed, and how. */
export interface SheetOptions {
  readonly month: IsoMonth;
  readonly weekStart: Weekday;
  readonly paper: Paper;
  readonly extras: ReadonlySet<SheetExtra>;
  /** BCP 47 tag. */
  readonly language: string;
  readonly words: Words;
}

interface SheetContext extends SheetOptions {
  readonly say: (template: string, ...values: readonly (string | number)[]) => string;
}

function escaped(text: string): string {
  return htmlText(withoutDirectionMarks(text));
}

function markOf(name: SessionMark): string {
  const shapes = markShapes[name].map(([tag, attributes]) => {
    const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(String(value))}"`);
    return `<${tag}${written.join('')}/>`;
  });
  return `<svg class="mark" viewBox="0 0 16 16" aria-hidden="true">${shapes.join('')}</svg>`;
}

function stateWords({ mark, reason }: MonthSession, { say, extras, words }: SheetContext): string {
  switch (mark) {
    case 'kept':
      return say('kept');
    case 'unmarked':
      return say('not marked');
    case 'moved':
      return say('moved');
    case 'planned':
      return '';
    default:
      return extras.has('reasons')
        ? say('left out: {0}', reasonInWords(reason ?? 'other', words))
        : say('left out');
  }
}

/** A reason from outside is not told from another one where reasons are private. */
function shownMark(mark: SessionMark, { extras }: SheetContext): SessionMark {
  return mark === 'excused' && !extras.has('reasons') ? 'missed' : mark;
}

/** Time, kind and state of a session in plain text: nothing else of its line. */
function sessionWords(one: MonthSession, context: SheetContext): string {
  const { session } = one.facts;
  const start = session.entry.span?.value.start;
  const what = start === undefined ? session.kind : `${formatTime(start)} ${session.kind}`;
  const state = stateWords(one, context);
  return state === '' ? what : `${what}, ${state}`;
}

function dayWords(day: MonthDay, { say, extras }: SheetContext): readonly string[] {
  const events = day.events.map(({ name }) =>
    extras.has('events') ? say('event: {0}', name) : say('event'),
  );
  return [
    ...events,
    ...(day.isBusy ? [say('busy')] : []),
    ...(day.isRest && day.isInMonth ? [say('rest')] : []),
  ];
}

/** Whether a day to come gets a box of its own: nothing is planned on it, and it is not taken. */
function hasEmptyBox(day: MonthDay): boolean {
  return day.isInMonth && day.when !== 'past' && day.sessions.length === 0 && !day.isBusy;
}

function dayCell(day: MonthDay, context: SheetContext): string {
  const lines = [
    `<span class="number">${escaped(dayNumberName(day.day, day.isInMonth, context.language))}</span>`,
    ...dayWords(day, context).map((words) => `<span class="word">${escaped(words)}</span>`),
    ...day.sessions.map(
      (one) =>
        `<span class="session">${markOf(shownMark(one.mark, context))}<span>${escaped(sessionWords(one, context))}</span></span>`,
    ),
    ...(hasEmptyBox(day)
      ? [
          `<span class="session">${markOf('planned')}<span class="line" role="img" aria-label="${escaped(context.say('room to write'))}"></span></span>`,
        ]
      : []),
  ];
  return `<td${day.isInMonth ? '' : ' class="other"'}>${lines.join('')}</td>`;
}

function weekRow(week: MonthWeek, context: SheetContext): string {
  const facts = clausesInWords(weekClauses(week, context.extras.has('reasons')), context.words);
  const cells = week.days.map((day) => dayCell(day, context)).join('');
  return `<tr>${cells}<td class="week">${escaped(facts)}</td></tr>`;
}

function totals(facts: MonthFacts, { say, words }: SheetContext): string {
  const { kept, minutesDone, byKind, best, ahead } = facts;
  const counted = byKind.filter(({ kept: own }) => own.n > 0);
  const percent = (share: number): string => words.quantity(100 * share, '%');
  const parts = [
    'status' in kept.share
      ? say('No planned session lies in the past yet.')
      : say(
          'Kept: {0} of {1} ({2}; 95 %: {3} to {4}).',
          kept.done,
          kept.n,
          percent(kept.share.proportion),
          percent(kept.share.lower),
          percent(kept.share.upper),
        ),
    ...(kept.excused === 0
      ? []
      : [say('Left out for reasons from outside, counted apart: {0}.', kept.excused)]),
    say('Trained: {0}. Still to come: {1}.', minutesInWords(minutesDone), ahead),
    ...(best ? [say('Best week: that of {0}.', words.dates.day(best.first, firstDateOf(facts.month)))] : []),
    ...(counted.length === 0
      ? []
      : [
          say(
            'By kind: {0}.',
            counted.map(({ kind, kept: own }) => say('{0} {1} of {2}', kind, own.done, own.n)).join(', '),
          ),
        ]),
  ];
  return parts.join(' ');
}

function legend(context: SheetContext): string {
  return markMeanings(context.words)
    .filter(({ mark }) => shownMark(mark, context) === mark)
    .map(({ mark, words }) => `<li>${markOf(mark)}${escaped(words)}</li>`)
    .join('');
}

/** How many lines the words of a cell take at most; the sheet is written so small that all rows have room. */
function linesOf(words: string, lettersALine: number): number {
  return Math.max(1, Math.ceil((words.length + 3) / lettersALine));
}

/** Lines of each row's fullest cell. */
function rowLines({ weeks }: MonthFacts, context: SheetContext): readonly number[] {
  const lettersALine = 17;
  return weeks.map((week) => {
    const days = week.days.map((day) =>
      [
        ...dayWords(day, context),
        ...day.sessions.map((one) => sessionWords(one, context)),
        ...(hasEmptyBox(day) ? [''] : []),
      ].reduce((sum, words) => sum + linesOf(words, lettersALine), 1),
    );
    const facts = clausesInWords(weekClauses(week, context.extras.has('reasons')), context.words);
    return Math.max(...days, linesOf(facts, lettersALine));
  });
}

/**
 * A month as one HTML file for the wall: no script, nothing from anywhere else, one page of A4 or Letter across. Of the
 * athlete's words only the kinds of sessions stand on it; the name, reasons and names of events when they are asked
 * for by name, and nothing else ever.
 */
export function monthSheet(open: JournalOfMonthPage, options: SheetOptions): string {
  const { words, language, month, extras } = options;
  const say: SheetContext['say'] = (template, ...values) => words.say(message(template, ...values));
  const context: SheetContext = { ...options, say };
  const check = checkContext(open.journal, { today: open.today(), zone: open.zone() });
  const facts = monthFacts(check, month, options.weekStart);
  const name = monthName(month, language);
  const title = extras.has('name') ? say('{0}, {1}', open.title, name) : name;
  const heads = weekdayNames(options.weekStart, language).map(
    ({ long }) => `<th scope="col">${escaped(long)}</th>`,
  );
  return printedPage({
    language,
    title: escaped(title),
    style: sheetStyle(options.paper, rowLines(facts, context)),
    content: `<h1>${escaped(title)}</h1>
<table>
<thead><tr>${heads.join('')}<th scope="col" class="week">${escaped(say('Week'))}</th></tr></thead>
<tbody>
${facts.weeks.map((week) => weekRow(week, context)).join('\n')}
</tbody>
</table>
<p>${escaped(totals(facts, context))}</p>
<ul>${legend(context)}</ul>`,
  });
}
