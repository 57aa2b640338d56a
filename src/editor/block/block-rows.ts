import { addDays, isoDate } from '../../notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import type { BlockPlan, BlockPlanWeek } from '../../planning/block';
import { hasChanges } from '../../planning/block';
import type { Message } from '../../training/finding';
import { message, minutesInWords } from '../../training/wording';
import type { Words } from '../words';

/** A row of the list in which a block is shown. */
export interface BlockRowView {
  readonly is: 'heading' | 'note' | 'week';
  readonly label: string;
  readonly icon?: 'warning' | 'circle-slash' | 'table';
  readonly description?: string;
  readonly detail?: string;
  /** The week whose day notes the row stands for. */
  readonly week?: BlockPlanWeek;
  readonly picked?: boolean;
}

const roleNames: Readonly<Record<BlockPlanWeek['figures']['role'], Message>> = {
  building: message('Building'),
  lighter: message('Lighter'),
  taper: message('Taper'),
};

function joined(parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join(', ');
}

/** `+10 % on the week before`. */
function changeWords(percent: number | undefined, { say, number }: Words): string | undefined {
  if (percent === undefined) return undefined;
  const rounded = Math.round(percent);
  if (rounded === 0) return say(message('as before'));
  return rounded > 0
    ? say(message('+{0} %', number(rounded, 0)))
    : say(message('−{0} %', number(-rounded, 0)));
}

function volumeWords({ row, figures }: BlockPlanWeek, { say }: Words): string {
  const cells = row.volumes.map(({ kind, sessions, minutes }) => {
    if (minutes === 0) return say(message('{0}: none', kind));
    return sessions === undefined
      ? say(message('{0} {1} min', kind, minutes))
      : say(message('{0} {1} × {2} min', kind, sessions, Math.round(minutes / sessions)));
  });
  if (!figures.isOver) return cells.join(', ');
  const done = [...figures.byKind].map(([kind, minutes]) => say(message('{0} {1} min', kind, minutes)));
  return done.join(', ');
}

function sessionWords({ placed, fitted }: BlockPlanWeek, { say, dates }: Words): string {
  return [
    ...placed.map(({ date, start, kind, minutes }) => {
      const time = start === undefined ? '' : ` ${formatTime(start)}`;
      return say(message('{0}{1} {2} {3} min', dates.short(date), time, kind, minutes));
    }),
    ...fitted.map(({ date, kind, from, to }) =>
      to === undefined
        ? say(message('{0} {1} taken out', dates.short(date), kind))
        : say(message('{0} {1} {2} → {3} min', dates.short(date), kind, from, to)),
    ),
  ].join(' · ');
}

function noteWords(week: BlockPlanWeek, { say }: Words): string {
  if (week.figures.isOver) return say(message('over, as it was done'));
  if (!week.isWritten) return say(message('new day notes'));
  return hasChanges(week) ? say(message('changed in its day notes')) : say(message('nothing to change'));
}

function weekRows(week: BlockPlanWeek, isNew: boolean, words: Words): readonly BlockRowView[] {
  const { figures, leftOut } = week;
  const monday = isoDate(mondayOf(figures.week));
  const { dates, say } = words;
  const sessions = sessionWords(week, words);
  return [
    {
      is: 'heading',
      label: say(
        message('{0}: {1} to {2}', figures.week, dates.short(monday), dates.short(addDays(monday, 6))),
      ),
    },
    {
      is: 'week',
      week,
      label: joined([
        say(message('{0}: {1}', say(roleNames[figures.role]), minutesInWords(figures.minutes))),
        changeWords(figures.changePercent, words),
      ]),
      description: joined([volumeWords(week, words), noteWords(week, words)]),
      ...(sessions === '' ? {} : { detail: sessions }),
      picked: !isNew && week.isWritten && hasChanges(week),
    },
    ...leftOut.map(
      ({ kind, goal, why }): BlockRowView => ({
        is: 'note',
        icon: 'circle-slash',
        label:
          goal === undefined
            ? say(message('Left out: {0}', kind))
            : say(message('Left out: {0} for {1}', kind, goal)),
        detail: say(why),
      }),
    ),
  ];
}

/**
 * The rows of the list: the note of the block, what there is to be warned of, then each week with its volume, the change
 * against the week before, what it is for, its sessions, and what found no place. Only rows of weeks stand for something
 * to write. Weeks that are over have a row, and nothing is written for them.
 */
export function blockRows(
  plan: BlockPlan,
  today: Parameters<typeof isoWeekOf>[0],
  words: Words,
): readonly BlockRowView[] {
  const { say } = words;
  const isNew = plan.newNote !== undefined;
  const { before } = plan;
  const minutes = [...before.minutes.values()].reduce((sum, one) => sum + one, 0);
  const current = isoWeekOf(today);
  return [
    ...(isNew
      ? [
          {
            is: 'note',
            icon: 'table',
            label: plan.note,
            description: say(message('is written in any case: the table of the block')),
            detail: say(message('Tick a week to write its day notes as well.')),
          } as const,
        ]
      : []),
    ...(plan.warnings.length === 0 ? [] : [{ is: 'heading', label: say(message('To look at')) } as const]),
    ...plan.warnings.map((one): BlockRowView => ({ is: 'note', icon: 'warning', label: say(one) })),
    ...(minutes === 0
      ? []
      : [
          {
            is: 'heading',
            label: say(
              message(
                'Before: {0} a week, from {1} to {2}',
                minutesInWords(minutes),
                before.weeks[0] ?? current,
                before.weeks.at(-1) ?? current,
              ),
            ),
          } as const,
        ]),
    ...plan.weeks.flatMap((week) => weekRows(week, isNew, words)),
  ];
}
