import type { JournalPlan, Need, Routine } from '../../journal/journal';
import type { PerWeek, Rating } from '../../notation/entries';
import type { IsoWeek } from '../../notation/time/iso-week';
import { kindsOf } from '../../training/kinds';
import { weekShortfall } from '../../training/per-week';
import { ruleSubject } from '../../training/rule-subject';
import type { SessionFacts } from '../../training/session-facts';
import type { CheckContext } from '../../training/week-under-check';
import { recoveryEffort } from '../session-changes';
import type { SessionToWrite } from '../session-line';
import type { Habits } from './habits';

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
  readonly routine?: Routine;
}

/** Minutes of a session when nothing at all says how long it lasts: an assumption, no published value. */
const assumedMinutes = { training: 60, recovery: 45 } as const;

/** The routine that a need names, or the first one of its kind. */
function routineFor(plan: JournalPlan, kind: string, named: string | undefined): Routine | undefined {
  if (named !== undefined) return plan.routines.get(named);
  return [...plan.routines.values()].find((routine) => routine.kind === kind);
}

interface Wanted {
  readonly kind: string;
  readonly group: string;
  readonly rating: Rating | undefined;
  readonly asked: PerWeek;
  readonly need?: Need;
}

function demand(wanted: Wanted, plan: JournalPlan, habits: Habits): Demand {
  const { kind, need, rating, group } = wanted;
  const kinds = kindsOf(kind, plan.kinds);
  const routine = routineFor(plan, kind, need?.routine);
  const assumed = assumedMinutes[kinds.includes('recovery') ? 'recovery' : 'training'];
  const known = need?.length?.minutes ?? routine?.length?.minutes ?? habits.usualMinutes(kind);
  // Where minutes are counted, a session without a length would count for nothing.
  const said = known ?? (wanted.asked.minutes === undefined ? undefined : assumed);
  const routineId = routine?.id ?? need?.routine;
  return {
    group,
    kinds,
    ...(need ? { need } : {}),
    ...(routine ? { routine } : {}),
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
): number {
  const shortfall = weekShortfall(asked, held, one.need?.length);
  if (!shortfall) return 0;
  if (shortfall.countedIn === 'sessions') return shortfall.missingSessions - counted.length;
  const minutes = counted.reduce((sum, { minutes: own }) => sum + own, 0);
  return Math.ceil((shortfall.asked - shortfall.held - minutes) / one.minutes);
}

function times(one: Demand, count: number): readonly Demand[] {
  return Array.from({ length: Math.max(0, count) }, () => one);
}

/**
 * What `week` lacks: first the sessions of its needs, those of the nearest goal first, then what the rules' own
 * minima ask for on top, recovery last. A week without any training is not asked for recovery.
 */
export function demandsOf(context: CheckContext, week: IsoWeek, habits: Habits): readonly Demand[] {
  const { plan, rules } = context;
  const { standing, needs } = context.weeks(week);
  const demands = needs.flatMap((need, index) => {
    const one = demand(
      { kind: need.kind, group: `need ${index}`, rating: need.rating, asked: need.perWeek, need },
      plan,
      habits,
    );
    const held = standing.filter((facts) => facts.countsFor.includes(need));
    return times(one, missing(need.perWeek, held, one, []));
  });
  const isRecovery = (kinds: readonly string[]) => kinds.includes('recovery');
  const minima = rules.filter(({ min, subject }) => min && ruleSubject(subject, plan).about === 'kind');
  // Recovery is asked for where there is training, so it comes when the rest of the week is known.
  for (const rule of [
    ...minima.filter(({ subject }) => subject !== 'recovery'),
    ...minima.filter(({ subject }) => subject === 'recovery'),
  ]) {
    if (!rule.min) continue;
    const trains =
      standing.some((facts) => !facts.isRecovery) || demands.some(({ kinds }) => !isRecovery(kinds));
    if (rule.subject === 'recovery' && !trains) continue;
    const easy = isRecovery(kindsOf(rule.subject, plan.kinds));
    const wanted = {
      kind: rule.subject,
      group: `rule ${rule.subject}`,
      rating: easy ? recoveryEffort : undefined,
      asked: rule.min,
    };
    const one = demand(wanted, plan, habits);
    const held = standing.filter((facts) => facts.kinds.includes(rule.subject));
    const counted = demands.filter(({ kinds }) => kinds.includes(rule.subject));
    demands.push(...times(one, missing(rule.min, held, one, counted)));
  }
  return demands;
}
