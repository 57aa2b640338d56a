import type { JournalPlan, Need, Routine, Session } from '../../journal/journal';
import type { PerWeek, Rating, SessionEntry } from '../../notation/entries';
import { readNote } from '../../notation/read-note';
import { type DayNumber, isoDate } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import type { WallMinutes } from '../../notation/time/wall-clock';
import { askedOfWeek, assumedMinutes } from '../../training/block/asked-in-week';
import type { Rule } from '../../training/default-rules';
import { kindsOf } from '../../training/kinds';
import { nearestFirst } from '../../training/open-needs';
import { weekShortfall } from '../../training/per-week';
import { ruleSubject } from '../../training/rule-subject';
import type { SessionFacts } from '../../training/session-facts';
import type { CheckContext } from '../../training/week-under-check';
import { recoveryEffort } from '../session-changes';
import { type SessionToWrite, sessionLine } from '../session-line';
import type { Habits } from './kept-habits';

/** One session that a week is asked to hold and does not hold yet. */
export interface Demand {
  /** The same for demands that are the same in everything. */
  readonly group: string;
  /** What the session's line says, its time left out; without a length when nothing says one. */
  readonly session: SessionToWrite;
  /** How long it lasts, assumed when nothing says. */
  readonly minutes: number;
  readonly kinds: readonly string[];
  /** The need that it serves; `undefined` when a rule's minimum asks for it. */
  readonly need?: Need;
  /** The rule whose minimum asks for it. */
  readonly rule?: Rule;
  readonly routine?: Routine;
  /**
   * Place in the order of what must not be left out: needs of the nearest goal first, then needs of every week, then
   * minima of rules. Absent for recovery that only a rule asks for: that is wanted next.
   */
  readonly importance?: number;
}

/** The routine that a need names, or the first one of its kind. */
function routineFor(plan: JournalPlan, kind: string, named: string | undefined): Routine | undefined {
  if (named !== undefined) return plan.routines.get(named);
  return [...plan.routines.values()].find((routine) => routine.kind === kind);
}

/** All needs in the order of what must not be left out. */
export function needsByImportance(plan: JournalPlan): readonly Need[] {
  return [
    ...nearestFirst(plan.goals.values()).flatMap((goal) => goal.needs),
    ...plan.needs.filter((need) => need.goal === undefined),
  ];
}

interface Wanted {
  readonly kind: string;
  readonly group: string;
  readonly rating: Rating | undefined;
  readonly asked: PerWeek;
  readonly length?: LengthOfTime;
  readonly need?: Need;
  readonly rule?: Rule;
  readonly importance: number | undefined;
}

function demandFor(wanted: Wanted, plan: JournalPlan, habits: Habits): Demand {
  const { kind, need, rule, rating, group, importance } = wanted;
  const kinds = kindsOf(kind, plan.kinds);
  const routine = routineFor(plan, kind, need?.routine);
  const assumed = assumedMinutes[kinds.includes('recovery') ? 'recovery' : 'training'];
  const known = wanted.length?.minutes ?? routine?.length?.minutes ?? habits.usualMinutes(kind);
  // Where minutes are counted, a session without a length would count for nothing.
  const said = known ?? (wanted.asked.minutes === undefined ? undefined : assumed);
  const routineId = routine?.id ?? need?.routine;
  return {
    group,
    kinds,
    ...(need ? { need } : {}),
    ...(rule ? { rule } : {}),
    ...(routine ? { routine } : {}),
    ...(importance === undefined ? {} : { importance }),
    minutes: said ?? assumed,
    session: {
      kind,
      ...(said === undefined ? {} : { minutes: said }),
      ...(rating === undefined ? {} : { rating }),
      ...(need?.goal === undefined ? {} : { goals: [need.goal] }),
      ...(need ? { with: need.with } : {}),
      ...(need?.where === undefined ? {} : { where: need.where }),
      ...(routineId === undefined ? {} : { routine: routineId }),
    },
  };
}

/** How many sessions like `one` make up for what `held` and the demands counted so far lack of `asked`. */
function missing(
  asked: PerWeek,
  held: readonly SessionFacts[],
  one: Demand,
  counted: readonly Demand[],
  length?: LengthOfTime,
): number {
  const shortfall = weekShortfall(asked, held, length);
  if (!shortfall) return 0;
  if (shortfall.countedIn === 'sessions') return shortfall.missingSessions - counted.length;
  const minutes = counted.reduce((sum, { minutes: own }) => sum + own, 0);
  return Math.ceil((shortfall.asked - shortfall.held - minutes) / one.minutes);
}

function times(one: Demand, count: number): readonly Demand[] {
  return Array.from({ length: Math.max(0, count) }, () => one);
}

/** The rules whose minimum asks for sessions of a kind, recovery last: it is asked for where there is training. */
export function minimumRules({ rules, plan }: CheckContext): readonly Rule[] {
  const minima = rules.filter(({ min, subject }) => min && ruleSubject(subject, plan).about === 'kind');
  return [
    ...minima.filter(({ subject }) => subject !== 'recovery'),
    ...minima.filter(({ subject }) => subject === 'recovery'),
  ];
}

/**
 * What `week` lacks: first the sessions of its needs, those of the nearest goal first, then what the rules' own
 * minima ask for on top. A week without any training is not asked for recovery.
 */
export function demandsOf(context: CheckContext, week: IsoWeek, habits: Habits): readonly Demand[] {
  const { plan } = context;
  const { standing, needs } = context.weeks(week);
  const order = needsByImportance(plan);
  const demands = needs.flatMap((need) => {
    const importance = order.indexOf(need);
    const asked = askedOfWeek(plan, need, week);
    const one = demandFor(
      {
        kind: need.kind,
        group: `need ${importance}`,
        rating: asked.rating,
        asked: asked.perWeek,
        ...(asked.length ? { length: asked.length } : {}),
        need,
        importance,
      },
      plan,
      habits,
    );
    const held = standing.filter((facts) => facts.countsFor.includes(need));
    return times(one, missing(asked.perWeek, held, one, [], asked.length));
  });
  for (const [index, rule] of minimumRules(context).entries()) {
    if (!rule.min) continue;
    const trains =
      standing.some((facts) => !facts.isRecovery) || demands.some(({ kinds }) => !kinds.includes('recovery'));
    if (rule.subject === 'recovery' && !trains) continue;
    const easy = kindsOf(rule.subject, plan.kinds).includes('recovery');
    const one = demandFor(
      {
        kind: rule.subject,
        group: `rule ${index}`,
        rating: easy ? recoveryEffort : undefined,
        asked: rule.min,
        rule,
        importance: isWish(rule) ? undefined : order.length + index,
      },
      plan,
      habits,
    );
    const held = standing.filter((facts) => facts.kinds.includes(rule.subject));
    const counted = demands.filter(({ kinds }) => kinds.includes(rule.subject));
    demands.push(...times(one, missing(rule.min, held, one, counted)));
  }
  return demands;
}

/** Whether a rule's minimum counts as recovery, which comes after the needs in the order of what is wanted. */
export function isWish({ subject, min }: Rule): boolean {
  return subject === 'recovery' && min?.count !== undefined;
}

/** What the session's line says at a time; one with a time says how long it lasts as well. */
export function lineAt(demand: Demand, start: WallMinutes | undefined): SessionToWrite {
  return start === undefined ? demand.session : { ...demand.session, minutes: demand.minutes, start };
}

/** A session line read back, so that a planned session is to the rules exactly what its note will be. */
function entryOf(session: SessionToWrite): SessionEntry | undefined {
  const entry = readNote(sessionLine(session)).entries[0];
  return entry?.tag === 'session' ? entry : undefined;
}

/** Puts a demanded session on days and times, as its note will say it. */
export type SessionMaker = (day: DayNumber, start: WallMinutes | undefined) => Session;

/**
 * The sessions of a demand; `undefined` when its line would not be read as one.
 * @param note A path that no note has and no other demand uses.
 */
export function sessionMaker(demand: Demand, note: string): SessionMaker | undefined {
  const timeless = entryOf(lineAt(demand, undefined));
  const timed = entryOf(lineAt(demand, 0));
  if (!timeless || !timed) return undefined;
  return (day, start) => ({
    note: start === undefined ? `${note}/${day}` : `${note}/${day} ${start}`,
    entry: start === undefined ? timeless : { ...timed, span: { value: { start }, range: timed.range } },
    date: isoDate(day),
    day,
    kind: demand.session.kind,
  });
}
