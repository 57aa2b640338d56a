import { isoDate } from '../../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { type BlockPlan, type BlockPlanWeek, hasChanges } from '../../planning/block';
import { totalOf } from '../../planning/block/volume-before';
import type { PlannedSession } from '../../planning/plan-weeks';
import type { Message } from '../../training/finding';
import { message, minutesInWords } from '../../training/wording';
import type { Words } from '../words';

/** A codicon of the editor. */
export type BlockIcon =
  | 'warning'
  | 'circle-slash'
  | 'check-all'
  | 'pass-filled'
  | 'circle-large-outline'
  | 'history'
  | 'blank';

/** A row of the list in which a block is shown. */
export interface BlockRowView {
  /** `write` writes what is ticked; `week` is ticked or not; `words` are only read. */
  readonly is: 'heading' | 'write' | 'week' | 'words';
  readonly label: string;
  readonly icon?: BlockIcon;
  readonly description?: string;
  readonly detail?: string;
  /** The week whose day notes are written when it is ticked. */
  readonly week?: IsoWeek;
}

/** What is shown of a block, and how. */
export interface ShownBlock {
  readonly plan: BlockPlan;
  /** The weeks whose day notes are to be written. */
  readonly ticked: ReadonlySet<IsoWeek>;
  readonly words: Words;
}

/** Characters of a line below a row; a longer one is cut off by the list. */
const lineWidth = 84;

const roleNames: Readonly<Record<BlockPlanWeek['figures']['role'], Message>> = {
  building: message('Building'),
  lighter: message('Lighter'),
  taper: message('Taper'),
};

function joined(parts: readonly (string | undefined)[], by: string): string {
  return parts.filter((part) => part !== undefined && part !== '').join(by);
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

/** Days and times of like sessions: `Mon 18:30, Thu 18:30`. */
function timesInWords(sessions: readonly PlannedSession[], { dates }: Words): string {
  return sessions
    .map(({ date, start }) =>
      joined([dates.weekdayShort(date), start === undefined ? '' : formatTime(start)], ' '),
    )
    .join(', ');
}

/** What a week holds of each kind, and where its new sessions stand, in parts that stand together. */
function kindsInWords({ row, figures, placed }: BlockPlanWeek, words: Words): readonly string[] {
  const { say } = words;
  if (figures.isOver)
    return [...figures.byKind].map(([kind, minutes]) =>
      say(message('{0} {1} min', kind, Math.round(minutes))),
    );
  const withTimes = (amount: string, kind: string) => {
    const own = placed.filter((one) => one.kind === kind);
    return joined([amount, timesInWords(own, words)], ' ');
  };
  const columns = row.volumes.map(({ kind, sessions, minutes }) => {
    const amount =
      minutes === 0
        ? say(message('{0} none', kind))
        : sessions === undefined
          ? say(message('{0} {1} min', kind, minutes))
          : say(message('{0} {1} × {2} min', kind, sessions, Math.round(minutes / sessions)));
    return withTimes(amount, kind);
  });
  const others = [...new Set(placed.map(({ kind }) => kind))].filter(
    (kind) => !row.volumes.some((volume) => volume.kind === kind),
  );
  return [...columns, ...others.map((kind) => withTimes(kind, kind))];
}

function fittedInWords({ fitted }: BlockPlanWeek, { say, dates }: Words): readonly string[] {
  return fitted.map(({ date, kind, from, to }) =>
    to === undefined
      ? say(message('{0} {1} taken out', dates.weekdayShort(date), kind))
      : say(message('{0} {1}: {2} min becomes {3}', dates.weekdayShort(date), kind, from, to)),
  );
}

/** Parts joined in lines that a list shows whole. */
function inLines(parts: readonly string[]): readonly string[] {
  const lines: string[] = [];
  for (const part of parts) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 3 + part.length <= lineWidth)
      lines[lines.length - 1] = `${last} · ${part}`;
    else lines.push(part);
  }
  return lines;
}

/** Whether the row of a week can be ticked: there is something to write into its day notes. */
export function canTick(week: BlockPlanWeek): boolean {
  return !week.figures.isOver && hasChanges(week);
}

/** The weeks that are ticked at first: those whose notes are written already, and read otherwise than the table. */
export function tickedAtFirst({ newNote, weeks }: BlockPlan): ReadonlySet<IsoWeek> {
  return new Set(
    weeks
      .filter((week) => newNote === undefined && week.isWritten && canTick(week))
      .map(({ figures }) => figures.week),
  );
}

function noteWords(week: BlockPlanWeek, { say }: Words): string {
  if (week.figures.isOver) return say(message('over; what was done'));
  if (!hasChanges(week)) return say(message('nothing to change'));
  return week.isWritten ? say(message('its day notes change')) : say(message('new day notes'));
}

function weekIcon(week: BlockPlanWeek, isTicked: boolean): BlockIcon {
  if (canTick(week)) return isTicked ? 'pass-filled' : 'circle-large-outline';
  return week.figures.isOver ? 'history' : 'blank';
}

function weekRows(week: BlockPlanWeek, { ticked, words }: ShownBlock): readonly BlockRowView[] {
  const { figures, leftOut } = week;
  const { dates, say } = words;
  const [detail, ...more] = inLines([...kindsInWords(week, words), ...fittedInWords(week, words)]);
  return [
    {
      is: 'week',
      icon: weekIcon(week, ticked.has(figures.week)),
      label: joined(
        [
          say(
            message(
              '{0} {1}: {2} min',
              // The year stands in the name of the note; a narrow list has no room for it.
              figures.week.slice(5),
              say(roleNames[figures.role]),
              words.number(figures.minutes, 0),
            ),
          ),
          changeWords(figures.changePercent, words),
        ],
        ', ',
      ),
      description: joined(
        [say(message('from {0}', dates.short(isoDate(mondayOf(figures.week))))), noteWords(week, words)],
        ', ',
      ),
      ...(detail === undefined ? {} : { detail }),
      week: figures.week,
    },
    ...more.map((line): BlockRowView => ({ is: 'words', icon: 'blank', label: '', description: line })),
    ...leftOut.map(
      ({ kind, goal, why }): BlockRowView => ({
        is: 'words',
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

function writeRow({ plan, ticked, words: { say } }: ShownBlock): BlockRowView {
  const count = ticked.size;
  const label = plan.newNote
    ? count === 0
      ? message('Write the block as one note')
      : count === 1
        ? message('Write the block and the day notes of 1 week')
        : message('Write the block and the day notes of {0} weeks', count)
    : count === 1
      ? message('Write the day notes of 1 week')
      : message('Write the day notes of {0} weeks', count);
  return {
    is: 'write',
    icon: 'check-all',
    label: say(label),
    description: plan.note,
    detail: say(message('Enter on a week ticks it: its day notes are written as well.')),
  };
}

function beforeRows({ plan: { before }, words: { say } }: ShownBlock): readonly BlockRowView[] {
  const minutes = totalOf(before.minutes);
  const [first, last] = [before.weeks[0], before.weeks.at(-1)];
  if (minutes === 0 || first === undefined || last === undefined) return [];
  return [
    {
      is: 'words',
      icon: 'history',
      label: say(message('Before: {0} a week', minutesInWords(minutes))),
      description:
        first === last
          ? say(message('as it was done in {0}', first))
          : say(message('the mean of {0} to {1}, as it was done', first, last)),
    },
  ];
}

/**
 * The rows of the list: the one that writes, what there is to be warned of, then each week with what it is for, its
 * volume, the change against the week before, its sessions, and what found no place.
 */
export function blockRows(shown: ShownBlock): readonly BlockRowView[] {
  const { plan, words } = shown;
  const { say } = words;
  return [
    writeRow(shown),
    ...(plan.warnings.length === 0 ? [] : [{ is: 'heading', label: say(message('To look at')) } as const]),
    ...plan.warnings.map((one): BlockRowView => ({ is: 'words', icon: 'warning', label: say(one) })),
    { is: 'heading', label: say(message('Weeks')) },
    ...beforeRows(shown),
    ...plan.weeks.flatMap((week) => weekRows(week, shown)),
  ];
}
