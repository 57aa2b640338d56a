import type { Rating } from '../../notation/entries';
import type { Unit } from '../../notation/quantity';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import type { PlannedSession } from '../../training/adherence/planned-sessions';
import type { Message } from '../../training/finding';
import type { StepFigures } from '../../training/progress/step-figures';
import type { SessionFacts } from '../../training/session-facts';
import type { RegionReport, WeekFacts, WeekReading } from '../../training/week-facts';
import { message, weekdayName } from '../../training/wording';

/** What may stand in the note beside the facts that always do. Both are private. */
export interface PrivateFacts {
  readonly pain: boolean;
}

/** Findings beyond this number are counted in one line. */
const mostFindings = 12;

const dayName = (date: IsoDate): string => weekdayName(dayNumber(date));

function amount(value: number, unit: Unit | undefined): string {
  const rounded = Number(value.toFixed(2));
  return unit === undefined ? String(rounded) : `${rounded} ${unit}`;
}

function keptLines({ kept, minutesKept, stillPlanned }: WeekFacts): readonly Message[] {
  const first =
    kept.n === 0
      ? message('Kept: no session was planned')
      : message('Kept: {0} of {1} sessions, {2} min', kept.done, kept.n, Math.round(minutesKept));
  const excused =
    kept.excused === 0 ? [] : [message('Not counted, for a reason from outside: {0}', kept.excused)];
  const ahead = stillPlanned.length === 0 ? [] : [message('Still planned: {0}', stillPlanned.length)];
  return [first, ...excused, ...ahead];
}

function notKeptLine({ facts, outcome, reason }: PlannedSession): Message {
  const { kind, date } = facts.session;
  return outcome === 'unmarked'
    ? message('Not marked: {0}, {1}', kind, dayName(date))
    : message('Not done: {0}, {1} ({2})', kind, dayName(date), reason ?? 'no reason');
}

function movedLine({ session }: SessionFacts): Message {
  return message(
    'Moved: {0}, {1} to {2}',
    session.kind,
    dayName(session.date),
    session.entry.moved?.value ?? '',
  );
}

function highestWords(highest: { readonly rating: Rating; readonly date: IsoDate } | undefined): string {
  return highest ? `${highest.rating}/10, ${dayName(highest.date)}` : 'not rated';
}

function bodyLine(template: string, reports: readonly RegionReport[]): readonly Message[] {
  if (reports.length === 0) return [];
  const words = reports.map(({ region, highest }) => `${region} (${highestWords(highest)})`);
  return [message(template, words.join(', '))];
}

function readingLine({ goal, metric, unit, side, condition, day, change }: WeekReading): Message {
  const what = [goal, metric, side, condition].filter((word) => word !== undefined).join(' ');
  const value = amount(day.value, unit);
  if (!change)
    return message('Measured: {0}, {1} on {2}; the first of its kind', what, value, dayName(day.date));
  const size = amount(Math.abs(change.change), unit);
  const noise = change.withinNoise ? ', within measuring noise' : '';
  const from = change.from.date;
  switch (change.direction) {
    case 'same':
      return message('Measured: {0}, {1} on {2}; as on {3}', what, value, dayName(day.date), from);
    case 'nearer':
      return message(
        `Measured: {0}, {1} on {2}; {4} nearer than on {3}${noise}`,
        what,
        value,
        dayName(day.date),
        from,
        size,
      );
    case 'further':
      return message(
        `Measured: {0}, {1} on {2}; {4} further than on {3}${noise}`,
        what,
        value,
        dayName(day.date),
        from,
        size,
      );
    default:
      return message(
        `Measured: {0}, {1} on {2}; {4} ${change.change < 0 ? 'less' : 'more'} than on {3}${noise}`,
        what,
        value,
        dayName(day.date),
        from,
        size,
      );
  }
}

function loadLines({ load }: WeekFacts): readonly Message[] {
  if (!load || load.sessions.length === 0) return [];
  const { change, load: total, isOver } = load;
  const unknown = total.unknown;
  if (unknown > 0) {
    return [
      message(
        'Load: {0} and more; of {1} sessions nothing says how long or how hard',
        total.knownTotal,
        unknown,
      ),
    ];
  }
  if (change.status === 'not-estimable' || !isOver) return [message('Load: {0}', total.knownTotal)];
  const percent = Math.round(change.percent);
  if (percent === 0)
    return [message('Load: {0}, as in the mean of the three weeks before', total.knownTotal)];
  return [
    message(
      `Load: {0}, {1} % ${percent < 0 ? 'less' : 'more'} than the mean of the three weeks before`,
      total.knownTotal,
      Math.abs(percent),
    ),
  ];
}

function stepLine({ goal, step }: { readonly goal: string; readonly step: StepFigures }): Message {
  const { id, state, reachedOn = '', daysEarly, daysOverdue = 0 } = step;
  if (state === 'overdue') return message('Step overdue: {0} of {1}, {2} days', id, goal, daysOverdue);
  return daysEarly !== undefined && daysEarly > 0
    ? message('Step reached: {0} of {1}, {2}, {3} days early', id, goal, reachedOn, daysEarly)
    : message('Step reached: {0} of {1}, {2}', id, goal, reachedOn);
}

function goalLines({ goals }: WeekFacts): readonly (readonly [string, Message])[] {
  return goals.flatMap(({ id, worst }) => (worst ? [[id, worst.series.verdict.message] as const] : []));
}

function suggestionLines({ reorder, load }: WeekFacts): readonly Message[] {
  if (!reorder) return [];
  const kinds = reorder.order.map(({ kind, date }) => `${kind} ${dayName(date)}`).join(', ');
  const isOver = load?.isOver === true;
  return [
    ...reorder.reasons,
    isOver ? message('Suggestion for a week like this: {0}', kinds) : message('Suggestion: {0}', kinds),
  ];
}

/** A fact, with a word in front of it where the sentence itself does not say what it is about. */
export interface FactLine {
  readonly about?: string;
  readonly message: Message;
}

/** What the lines of a section are about. */
export type FactSubject = 'kept' | 'body' | 'measured' | 'found';

/** The facts about one thing. */
export interface FactSection {
  readonly subject: FactSubject;
  readonly lines: readonly FactLine[];
}

/**
 * The facts of a week as sentences, in the order in which they are written. Pain is left out unless asked for: neither
 * its reports nor a finding about it.
 */
export function factSections(facts: WeekFacts, { pain }: PrivateFacts): readonly FactSection[] {
  const plain = (messages: readonly Message[]): readonly FactLine[] =>
    messages.map((one) => ({ message: one }));
  const found = [...facts.findings, ...facts.history].filter(
    // Sessions that are not marked have their own lines.
    ({ code }) => code !== 'session-overdue' && (pain || code !== 'open-pain'),
  );
  const further = found.length - mostFindings;
  return [
    {
      subject: 'kept',
      lines: plain([...keptLines(facts), ...facts.notKept.map(notKeptLine), ...facts.moved.map(movedLine)]),
    },
    {
      subject: 'body',
      lines: plain([
        ...bodyLine('Sore: {0}', facts.soreness),
        ...(pain ? bodyLine('Pain: {0}', facts.pain) : []),
      ]),
    },
    {
      subject: 'measured',
      lines: [
        ...plain([...facts.readings.map(readingLine), ...loadLines(facts), ...facts.steps.map(stepLine)]),
        ...goalLines(facts).map(([about, one]) => ({ about, message: one })),
      ],
    },
    {
      subject: 'found',
      lines: [
        ...found.slice(0, mostFindings).map(({ code, message: one }) => ({ about: code, message: one })),
        ...plain(further > 0 ? [message('{0} more findings', further)] : []),
        ...plain(suggestionLines(facts)),
      ],
    },
  ];
}
