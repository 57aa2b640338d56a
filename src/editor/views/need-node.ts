import type { Need } from '../../journal/journal';
import { entryPlace } from '../../training/session-place';
import type { NeedVolume, Volume } from '../../training/week-volume';
import { minutesInWords } from '../../training/wording';
import { inLines, inOneLine, say, type ViewContext, viewPlace } from './view-context';
import type { ViewNode } from './view-node';

/** The need as the week asks for it: by its line, or by the table of a block. */
function asAsked({ need: { length: _, ...need }, asked, length }: NeedVolume): Need {
  return { ...need, perWeek: asked, ...(length ? { length } : {}) };
}

/** Minutes that a need asks of a week, when it says how long its sessions are. */
export function askedMinutes(need: Need): number | undefined {
  const { perWeek, length } = need;
  if (perWeek.count === undefined) return perWeek.minutes;
  return length && perWeek.count * length.minutes;
}

function isMet(need: Need, given: Volume): boolean {
  const { perWeek } = need;
  return perWeek.count === undefined ? given.minutes >= perWeek.minutes : given.sessions >= perWeek.count;
}

function minutesOf(given: number, asked: number, context: ViewContext): string {
  const { number } = context.words;
  return say(context, '{0} of {1} min', number(given, 0), number(asked, 0));
}

/** `1 of 2 done, 75 of 150 min`, or `90 of 300 min done`. */
function doneInWords({ need, done }: NeedVolume, context: ViewContext): string {
  const { perWeek } = need;
  if (perWeek.count === undefined) {
    return say(context, '{0} done', minutesOf(done.minutes, perWeek.minutes, context));
  }
  const minutes = askedMinutes(need);
  return inOneLine(
    say(context, '{0} of {1} done', done.sessions, perWeek.count),
    minutes === undefined ? undefined : minutesOf(done.minutes, minutes, context),
  );
}

/** What of it stands in the week and is not done, and what no session stands for. */
function restInWords({ need, done, standing }: NeedVolume, isOver: boolean, context: ViewContext): string {
  const open = standing.sessions - done.sessions;
  const missing =
    need.perWeek.count === undefined
      ? need.perWeek.minutes - standing.minutes
      : need.perWeek.count - standing.sessions;
  const amount = need.perWeek.count === undefined ? minutesInWords(missing) : missing;
  return inOneLine(
    open <= 0 ? undefined : isOver ? say(context, '{0} overdue', open) : say(context, '{0} open', open),
    missing <= 0
      ? undefined
      : isOver
        ? say(context, '{0} missing', amount)
        : say(context, '{0} to plan', amount),
  );
}

function askedInWords(need: Need, context: ViewContext): string {
  const { perWeek, length, where, routine } = need;
  return inLines(
    inOneLine(
      perWeek.count === undefined
        ? say(context, '{0} asks for {1} a week', need.kind, minutesInWords(perWeek.minutes))
        : say(context, '{0} asks for {1} a week', need.kind, perWeek.count),
      length && say(context, '{0} each', minutesInWords(length.minutes)),
    ),
    need.with.length === 0 ? undefined : say(context, 'with {0}', need.with.join(', ')),
    where === undefined ? undefined : say(context, 'at: {0}', where),
    routine === undefined ? undefined : say(context, 'routine: {0}', routine),
  );
}

/** How a row of a need is told apart and named. */
export interface NeedRow {
  readonly within: string;
  /** Tells needs of one goal apart. */
  readonly ordinal: number;
  readonly label: string;
  /** Whether the week has passed, so that nothing can be planned any more. */
  readonly isOver: boolean;
}

/** A row for what a week gives to one need. */
export function needNode(given: NeedVolume, context: ViewContext, row: NeedRow): ViewNode {
  const volume = { ...given, need: asAsked(given) };
  const { need, done } = volume;
  const description = inOneLine(doneInWords(volume, context), restInWords(volume, row.isOver, context));
  return {
    id: `${context.id}#${row.within}/need/${need.goal ?? ''}/${row.ordinal}`,
    kind: 'need',
    journal: context.id,
    label: row.label,
    description,
    tooltip: inLines(askedInWords(need, context), description),
    icon: isMet(need, done) ? 'pass' : 'checklist',
    accessibilityLabel: inOneLine(row.label, description),
    place: viewPlace(context, entryPlace(need)),
    ...(need.goal === undefined ? {} : { goal: need.goal }),
    children: [],
  };
}
