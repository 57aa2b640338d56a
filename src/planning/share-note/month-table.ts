import { isoDate, isoWeekday } from '../../notation/time/iso-date';
import type { SessionFacts } from '../../training/session-facts';
import { message, weekdayName } from '../../training/wording';
import { sessionsOfDays } from './session-items';
import type { ShareContext, SharedDays } from './share-context';

/** One mark a session, told by its shape; the line below the table says what each means. */
const marks: { readonly [State in SessionFacts['state']]: string } = {
  done: '✓',
  skipped: '–',
  moved: '→',
  overdue: '?',
  planned: '○',
};

/** The weeks of a month as a table, a row a week from Monday to Sunday, and what its marks mean. */
export function monthTable(context: ShareContext, days: SharedDays): string {
  const { say } = context;
  const sessions = sessionsOfDays(context, days);
  const monday = days.first - isoWeekday(days.first) + 1;
  const cell = (day: number): string => {
    if (day < days.first || day > days.last) return '';
    const own = sessions.filter(({ session }) => session.day === day).map(({ state }) => marks[state]);
    return [String(Number(isoDate(day).slice(8))), ...own].join(' ');
  };
  const rows: string[] = [];
  for (let first = monday; first <= days.last; first += 7)
    rows.push(`| ${[0, 1, 2, 3, 4, 5, 6].map((offset) => cell(first + offset)).join(' | ')} |`);
  const head = [0, 1, 2, 3, 4, 5, 6].map((offset) => weekdayName(monday + offset).slice(0, 3));
  return [
    `| ${head.join(' | ')} |`,
    `|${' --- |'.repeat(7)}`,
    ...rows,
    '',
    say(
      message(
        '{0} kept, {1} not done, {2} moved, {3} not marked, {4} planned',
        marks.done,
        marks.skipped,
        marks.moved,
        marks.overdue,
        marks.planned,
      ),
    ),
  ].join('\n');
}
