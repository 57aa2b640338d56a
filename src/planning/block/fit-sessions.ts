import type { Journal, Need, Session } from '../../journal/journal';
import type { IsoDate } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import { formatSessionLength } from '../../notation/time/length-of-time';
import { setFieldEdits } from '../../notation/write-entry';
import { type AskedOfWeek, askedOfWeek } from '../../training/block/asked-in-week';
import type { Message } from '../../training/finding';
import type { SessionFacts } from '../../training/session-facts';
import { type CheckContext, type CheckOptions, checkContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import type { DraftJournal } from '../draft-journal';
import { changeChecker, speaksAgainst } from '../findings-added';
import { endOfLine, startOfLine } from '../line-ending';
import type { NoteChange } from '../note-change';
import { bodyUnder } from '../session-block';
import { sessionLine } from '../session-line';

/** What becomes of a session so that its week is as the table says. */
export interface FittedSession {
  readonly date: IsoDate;
  readonly kind: string;
  /** Minutes as they were. */
  readonly from: number;
  /** Minutes as they become; `undefined` for a session that is taken out. */
  readonly to?: number;
}

/** What of a week was made as its table says, and what stays otherwise. */
export interface FittedWeek {
  readonly fitted: readonly FittedSession[];
  /** What stays as it is, and why. */
  readonly kept: readonly Message[];
}

/** Whether a session may be changed: planned, which is today or later, agreed with nobody, and in its own note. */
function isOpen({ state, session }: SessionFacts): boolean {
  return state === 'planned' && session.entry.with.length === 0 && session.movedFrom === undefined;
}

/** Whether not a word of a session's item is the athlete's own: the line and body are what the planner writes. */
function isUntouched(journal: Journal, session: Session): boolean {
  const note = journal.note(session.note);
  if (!note) return false;
  const { entry } = session;
  const { body, span, length, rating, where } = entry;
  if (span?.value.end !== undefined) return false;
  const line = sessionLine({
    kind: session.kind,
    ...(span ? { start: span.value.start } : {}),
    ...(length ? { minutes: length.value.minutes } : {}),
    ...(rating ? { rating: rating.value } : {}),
    goals: entry.for.map(({ value }) => value),
    ...(where ? { where: where.value } : {}),
    ...(entry.routine ? { routine: entry.routine.value } : {}),
  });
  if (note.text.slice(entry.itemRange.start, entry.range.end) !== line) return false;
  const isNested = note.reading.entries.some(
    ({ range }) => body && range.start >= body.range.start && range.start < body.range.end,
  );
  if (isNested) return false;
  const routine = entry.routine && journal.plan.routines.get(entry.routine.value);
  const routineNote = routine && journal.note(routine.note);
  const expected = routine && routineNote ? bodyUnder(routineNote.text, routine.entry) : '';
  return bodyUnder(note.text, entry) === expected;
}

function withoutSession(journal: Journal, { note: path, entry }: Session): readonly NoteChange[] {
  const note = journal.note(path);
  if (!note) return [];
  const { text } = note;
  const start = startOfLine(text, entry.itemRange.start);
  const last = endOfLine(text, Math.max(entry.range.end, entry.body?.range.end ?? 0));
  const ending = /^(?:\r\n|\n|\r)/.exec(text.slice(last, last + 2))?.[0] ?? '';
  const range = { start, end: last + ending.length };
  return [{ kind: 'edit', note: path, before: text, edits: [{ range, text: '' }] }];
}

/** The change of a session's length, unless a longer one would break a rule. */
function withLength(
  context: CheckContext,
  session: Session,
  minutes: number,
): readonly NoteChange[] | 'breaks a rule' {
  const { journal } = context;
  const note = journal.note(session.note);
  const { length } = session.entry;
  if (!note || !length) return [];
  const longer: Session = {
    ...session,
    entry: { ...session.entry, length: { ...length, value: { minutes, unit: 'min' } } },
  };
  const [against] = changeChecker(
    journal,
    context,
  )({ without: [session], added: [longer] }).filter(speaksAgainst);
  if (against) return 'breaks a rule';
  const edits = setFieldEdits(note.text, session.entry, length, { text: formatSessionLength(minutes) });
  return [{ kind: 'edit', note: note.path, before: note.text, edits }];
}

/** One thing to do about a week, or one that cannot be done. */
type Step =
  | { readonly is: 'change'; readonly changes: readonly NoteChange[]; readonly fitted: FittedSession }
  | { readonly is: 'kept'; readonly key: string; readonly why: Message };

function surplusStep(
  context: CheckContext,
  need: Need,
  { perWeek }: AskedOfWeek,
  held: readonly SessionFacts[],
  week: IsoWeek,
): Step | undefined {
  if (perWeek.count === undefined || held.length <= perWeek.count) return undefined;
  const own = held.filter((facts) => isOpen(facts) && isUntouched(context.journal, facts.session)).at(-1);
  if (own) {
    const { date, kind } = own.session;
    const changes = withoutSession(context.journal, own.session);
    return { is: 'change', changes, fitted: { date, kind, from: own.minutes ?? 0 } };
  }
  return {
    is: 'kept',
    key: `${week} ${need.note} ${need.entry.range.start}`,
    why: message(
      '{0}: {1} sessions of {2} stand there, the table says {3}; done, agreed or written by hand, they stay',
      week,
      held.length,
      need.kind,
      perWeek.count,
    ),
  };
}

function lengthStep(
  context: CheckContext,
  { length }: AskedOfWeek,
  held: readonly SessionFacts[],
  kept: ReadonlySet<string>,
): Step | undefined {
  if (!length) return undefined;
  for (const facts of held) {
    const { session } = facts;
    const from = session.entry.length?.value.minutes;
    const key = `${session.date} ${session.note} ${session.entry.range.start}`;
    if (from === undefined || from === length.minutes || session.entry.span?.value.end !== undefined)
      continue;
    if (kept.has(key) || !isOpen(facts)) continue;
    const changes = withLength(context, session, length.minutes);
    if (changes === 'breaks a rule') {
      const template = '{0}, {1}: stays at {2} min; {3} min would break a rule';
      const why = message(template, session.date, session.kind, from, length.minutes);
      return { is: 'kept', key, why };
    }
    if (changes.length === 0) continue;
    const fitted = { date: session.date, kind: session.kind, from, to: length.minutes };
    return { is: 'change', changes, fitted };
  }
  return undefined;
}

function nextStep(context: CheckContext, week: IsoWeek, kept: ReadonlySet<string>): Step | undefined {
  const { standing, needs } = context.weeks(week);
  for (const need of needs) {
    const asked = askedOfWeek(context.plan, need, week);
    if (asked === need) continue;
    const held = standing.filter(({ countsFor }) => countsFor.includes(need));
    const surplus = surplusStep(context, need, asked, held, week);
    if (surplus && !(surplus.is === 'kept' && kept.has(surplus.key))) return surplus;
    const length = lengthStep(context, asked, held, kept);
    if (length) return length;
  }
  return undefined;
}

/** More steps than a week can need. */
const mostSteps = 200;

/**
 * Makes the planned sessions of a week as long and as many as the block's table says, in a draft. Only sessions that are
 * still to do, from today on, and agreed with nobody change; one is taken out only when not a word of it is the
 * athlete's own. What the week lacks is not added here.
 */
export function fitSessions(draft: DraftJournal, week: IsoWeek, options: CheckOptions): FittedWeek {
  const fitted: FittedSession[] = [];
  const why: Message[] = [];
  const kept = new Set<string>();
  for (let count = 0; count < mostSteps; count += 1) {
    const step = nextStep(checkContext(draft.journal, options), week, kept);
    if (!step) break;
    if (step.is === 'kept') {
      kept.add(step.key);
      why.push(step.why);
    } else {
      draft.write(step.changes);
      fitted.push(step.fitted);
    }
  }
  return { fitted, kept: why };
}
