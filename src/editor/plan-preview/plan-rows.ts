import type { Journal } from '../../journal/journal';
import type { NotePath, NotePlace } from '../../journal/note';
import { addDays, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { againstKept, changesKept, type KeptOfPlan, restDaysOf } from '../../planning/kept-sessions';
import type { NoteChange } from '../../planning/note-change';
import type { PlannedSession, PlanWeeksOptions, WeeksPlan } from '../../planning/plan-weeks';
import type { NamedLine } from '../../planning/plan-weeks/weeks-plan';
import type { Message } from '../../training/finding';
import { entryPlace, sessionPlace } from '../../training/session-place';
import { message, minutesInWords } from '../../training/wording';
import { inOneLine } from '../views/view-context';
import type { Words } from '../words';
import { linesOf } from './words-in-lines';

/** What happens when a row is chosen. */
export type PlanRowAction =
  | { readonly does: 'write'; readonly changes: readonly NoteChange[] }
  /** Ticks a session of the plan, by its name, or takes the tick away. */
  | { readonly does: 'tick'; readonly session: string }
  | { readonly does: 'tick-rest-days' }
  | { readonly does: 'open'; readonly place: NotePlace }
  /** Changes a rule, and plans again. */
  | { readonly does: 'change'; readonly changes: readonly NoteChange[] }
  | { readonly does: 'nothing' };

/** A row of the preview, in the person's language. */
export interface PlanRow {
  /** The same as long as the row speaks of the same thing. */
  readonly id: string;
  /** Name of one of the editor's own icons. */
  readonly icon: string;
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
  readonly action: PlanRowAction;
  /** The line that the row speaks of, behind a button of its own. */
  readonly place?: NotePlace;
}

/** Rows under a heading; the first ones have none. */
export interface PlanSection {
  readonly title?: string;
  readonly rows: readonly PlanRow[];
}

/** A plan, and what of it is ticked. */
export interface ShownPlan {
  readonly journal: Journal;
  readonly options: PlanWeeksOptions;
  readonly plan: WeeksPlan;
  /** Names of the sessions that are not to be written. */
  readonly unticked: ReadonlySet<string>;
  readonly withRestDays: boolean;
  readonly words: Words;
}

/** Characters that the two lines of a row show in all but a narrow window. */
const labelWidth = 70;
const detailWidth = 76;

function say({ words }: Pick<ShownPlan, 'words'>, template: string, ...values: Message['values']): string {
  return words.say(message(template, ...values));
}

/** Names a session of a plan, the same in a plan made anew that has it, too. */
export function sessionName({ kind, goal, date, start, from }: PlannedSession): string {
  const moving = from ? `${from.note} ${from.entry.range.start}` : '';
  return [kind, goal, date, start, moving].join(' ');
}

function ticked({ plan, unticked }: ShownPlan): readonly PlannedSession[] {
  return plan.placed.filter((session) => !unticked.has(sessionName(session)));
}

/** What would be written of the plan as it is ticked; nothing when no session is. */
function changesOf(shown: ShownPlan, kept: KeptOfPlan): readonly NoteChange[] {
  if (kept.sessions.length === 0 && shown.plan.placed.length > 0) return [];
  return changesKept(shown.journal, shown.options, shown.plan, kept);
}

function sessionWords(shown: ShownPlan, kind: string, goal: string | undefined): string {
  return goal === undefined ? kind : say(shown, '{0} for {1}', kind, goal);
}

/** The line that asks for a session, or where it stands now. */
function placeOf({ asked: { what } }: PlannedSession): NotePlace | undefined {
  if (what.is === 'moving') return sessionPlace(what.session);
  const written = what.demand.need ?? what.demand.rule?.written;
  return written && entryPlace(written);
}

function sessionRow(shown: ShownPlan, session: PlannedSession): PlanRow {
  const { words } = shown;
  const name = sessionName(session);
  const { date, start, kind, goal, minutes, why } = session;
  const place = placeOf(session);
  const day = words.dates.short(date);
  return {
    id: `session ${name}`,
    icon: shown.unticked.has(name) ? 'circle-large-outline' : 'pass-filled',
    label: `${day}${start === undefined ? '' : ` ${formatTime(start)}`}: ${sessionWords(shown, kind, goal)}`,
    description: inOneLine(
      minutes === 0 ? undefined : minutesInWords(minutes),
      shown.unticked.has(name) ? say(shown, 'not written') : undefined,
    ),
    detail: words.say(why),
    action: { does: 'tick', session: name },
    ...(place ? { place } : {}),
  };
}

function restDaysRow(shown: ShownPlan, days: readonly IsoDate[]): PlanRow {
  const { words, withRestDays } = shown;
  const names = days.map((day) => words.dates.short(day)).join('; ');
  return {
    id: 'rest days',
    icon: withRestDays ? 'pass-filled' : 'circle-large-outline',
    label: days.length === 1 ? say(shown, 'Rest day: {0}', names) : say(shown, 'Rest days: {0}', names),
    description: withRestDays ? say(shown, 'a note each') : say(shown, 'not written'),
    action: { does: 'tick-rest-days' },
  };
}

function notesInWords(shown: ShownPlan, changes: readonly NoteChange[]): string {
  const notes = new Set<NotePath>(changes.map(({ note }) => note)).size;
  return notes === 1 ? say(shown, '1 note') : say(shown, '{0} notes', notes);
}

function writeLabel(shown: ShownPlan, count: number): string {
  const { plan } = shown;
  const all = plan.placed.length;
  if (count < all) return say(shown, 'Write {0} of {1} sessions', count, all);
  if (all === 0) return say(shown, 'Write the notes');
  return all === 1 ? say(shown, 'Write 1 session') : say(shown, 'Write {0} sessions', all);
}

/** The row that writes what is ticked; a part that breaks a rule which the whole keeps is written with a warning. */
function writeRow(shown: ShownPlan): PlanRow | undefined {
  if (shown.plan.changes.length === 0) return undefined;
  const sessions = ticked(shown);
  const changes = changesOf(shown, { sessions, restDays: shown.withRestDays });
  if (changes.length === 0)
    return {
      id: 'write',
      icon: 'circle-large-outline',
      label: say(shown, 'Nothing is ticked, nothing is written'),
      action: { does: 'nothing' },
    };
  const isPart = sessions.length < shown.plan.placed.length;
  const [against] = isPart ? againstKept(shown.journal, shown.options, sessions) : [];
  return {
    id: 'write',
    icon: 'check-all',
    label: writeLabel(shown, sessions.length),
    description: say(shown, 'into {0}, one undo step', notesInWords(shown, changes)),
    ...(against ? { detail: `$(warning) ${shown.words.say(against.message)}` } : {}),
    action: { does: 'write', changes },
  };
}

/** The sentence that says why not everything fits, in as many rows as it takes. */
function conflictRows(shown: ShownPlan): readonly PlanRow[] {
  const { conflict } = shown.plan;
  if (!conflict) return [];
  const [line] = conflict.lines;
  const action: PlanRowAction = line ? { does: 'open', place: line } : { does: 'nothing' };
  const lines = linesOf(`${shown.words.say(conflict.sentence)}.`, (index) =>
    index % 2 === 0 ? labelWidth : detailWidth,
  );
  return Array.from({ length: Math.ceil(lines.length / 2) }, (_, index): PlanRow => {
    const detail = lines[2 * index + 1];
    return {
      id: `conflict ${index}`,
      icon: index === 0 ? 'warning' : 'blank',
      label: lines[2 * index] ?? '',
      ...(detail === undefined ? {} : { detail }),
      action,
    };
  });
}

function leftOutRows(shown: ShownPlan): readonly PlanRow[] {
  return shown.plan.leftOut.map(({ kind, goal, need, from, why }, index) => {
    const place = from ? sessionPlace(from) : need && entryPlace(need);
    return {
      id: `left out ${index}`,
      icon: 'circle-slash',
      label: sessionWords(shown, kind, goal),
      ...(from ? { description: say(shown, 'stays on {0}', shown.words.dates.weekday(from.date)) } : {}),
      detail: shown.words.say(why),
      action: place ? { does: 'open', place } : { does: 'nothing' },
      ...(place ? { place } : {}),
    };
  });
}

/** Each line once: two parts of a conflict can stand on one line. */
function distinct(lines: readonly NamedLine[]): readonly NamedLine[] {
  return lines.filter(
    ({ note, range }, index) =>
      lines.findIndex((other) => other.note === note && other.range.start === range.start) === index,
  );
}

function conflictLineRows({ plan }: ShownPlan): readonly PlanRow[] {
  return distinct(plan.conflict?.lines ?? []).map((line) => ({
    id: `line ${line.note} ${line.range.start}`,
    icon: 'go-to-file',
    label: line.text,
    description: line.note,
    action: { does: 'open', place: line },
  }));
}

function remedyRows(shown: ShownPlan): readonly PlanRow[] {
  return shown.plan.remedies.map(({ title, line, writes }, index) => {
    const canWrite = writes !== undefined && writes.length > 0;
    const action: PlanRowAction = canWrite
      ? { does: 'change', changes: writes }
      : line
        ? { does: 'open', place: line }
        : { does: 'nothing' };
    return {
      id: `remedy ${index}`,
      icon: canWrite ? 'edit' : 'lightbulb',
      label: shown.words.say(title),
      ...(canWrite
        ? { detail: say(shown, 'changes {0} and plans again', writes[0]?.note ?? '') }
        : line
          ? { detail: say(shown, 'opens {0}', line.note) }
          : {}),
      action,
      ...(line ? { place: line } : {}),
    };
  });
}

function differenceRows(shown: ShownPlan): readonly PlanRow[] {
  return shown.plan.differences.map((difference, index) => ({
    id: `difference ${index}`,
    icon: 'arrow-swap',
    label: shown.words.say(difference),
    action: { does: 'nothing' },
  }));
}

/** All of a plan in rows: what fits, what does not and why, what would help, what is other than the week before. */
export function planSections(shown: ShownPlan): readonly PlanSection[] {
  const { journal, options, plan } = shown;
  const rest = restDaysOf(journal, options, plan);
  const write = writeRow(shown);
  const sections: readonly PlanSection[] = [
    { rows: [...conflictRows(shown), ...(write ? [write] : [])] },
    { title: say(shown, 'Would make it fit'), rows: remedyRows(shown) },
    { title: say(shown, 'Left out'), rows: leftOutRows(shown) },
    {
      title: options.mode === 'rearrange' ? say(shown, 'New places') : say(shown, 'Sessions'),
      rows: [
        ...plan.placed.map((session) => sessionRow(shown, session)),
        ...(rest.length > 0 ? [restDaysRow(shown, rest)] : []),
      ],
    },
    { title: say(shown, 'Lines that do not fit together'), rows: conflictLineRows(shown) },
    ...(options.mode === 'rearrange'
      ? []
      : [{ title: say(shown, 'Other than last week'), rows: differenceRows(shown) }]),
  ];
  return sections.filter(({ rows }) => rows.length > 0);
}

/** `Mon, Mar 2 to Sun, Mar 8: 7 placed, 1 left out`, and whether it is the best. */
export function planTitle({ plan, options, words }: Omit<ShownPlan, 'unticked' | 'withRestDays'>): string {
  const [week] = plan.weeks;
  const placed =
    plan.placed.length === 1
      ? say({ words }, '1 session placed')
      : say({ words }, '{0} sessions placed', plan.placed.length);
  const left =
    plan.leftOut.length === 0
      ? say({ words }, 'nothing left out')
      : say({ words }, '{0} left out', plan.leftOut.length);
  const counts = plan.isProven ? `${placed}, ${left}` : say({ words }, '{0}, {1}, best found', placed, left);
  if (options.mode === 'rearrange') return say({ words }, 'The rest of this week: {0}', counts);
  if (week === undefined) return counts;
  const first = isoDate(mondayOf(week));
  return say(
    { words },
    '{0} to {1}: {2}',
    words.dates.short(first),
    words.dates.short(addDays(first, 6)),
    counts,
  );
}
