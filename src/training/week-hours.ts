import type { JournalPlan, Need } from '../journal/journal';
import type { NotePlace } from '../journal/note';
import type { Weekday } from '../notation/entries';
import type { IsoWeek } from '../notation/time/iso-week';
import { askedOfWeek } from './block/asked-in-week';
import type { Rule } from './default-rules';
import { kindsOf } from './kinds';
import { openNeeds } from './open-needs';
import { ruleSubject } from './rule-subject';
import { hardEffort } from './session-facts';
import { entryPlace } from './session-place';

/** What a need asks of an ordinary week. */
export interface NeedCost {
  readonly need: Need;
  /** `undefined` when the need asks for minutes and nothing says how long a session is. */
  readonly sessions: number | undefined;
  /** `undefined` when nothing says how long a session is. */
  readonly minutes: number | undefined;
  readonly isRecovery: boolean;
}

/** A limit of an ordinary week that the needs together go beyond. */
export interface WeekOverrun {
  readonly countedIn: 'minutes' | 'sessions';
  /** Free hours, free hours on the days that are not for rest, the day's cap, or the `max:` of a rule. */
  readonly by: 'free-hours' | 'free-hours-without-rest-days' | 'cap' | 'rule';
  /** The rule's subject, when a rule is the limit. */
  readonly subject?: string;
  /** At least so much is asked: needs that say no length are not in it. */
  readonly asked: number;
  readonly allowed: number;
  /** The needs that are counted. */
  readonly costs: readonly NeedCost[];
  readonly place: NotePlace;
}

const weekdays: readonly Weekday[] = [1, 2, 3, 4, 5, 6, 7];
const minutesADay = 1440;

function costOf(need: Need, plan: JournalPlan, week: IsoWeek): NeedCost {
  const asked = askedOfWeek(plan, need, week);
  const { count, minutes } = asked.perWeek;
  const routine = need.routine === undefined ? undefined : plan.routines.get(need.routine);
  const length = asked.length?.minutes ?? routine?.length?.minutes;
  return {
    need,
    sessions: count ?? (length === undefined ? undefined : Math.ceil(minutes / length)),
    minutes: count === undefined ? minutes : length === undefined ? undefined : count * length,
    isRecovery: kindsOf(need.kind, plan.kinds).includes('recovery'),
  };
}

/** What each need of `week` asks: those of the open goals, nearest first, then those of every week. */
export function needCosts(plan: JournalPlan, week: IsoWeek): readonly NeedCost[] {
  return openNeeds(plan, week).map((need) => costOf(need, plan, week));
}

/** Minutes of the free hours that begin on a weekday, overlapping lines counted once. */
function freeMinutes(plan: JournalPlan, weekday: Weekday): number {
  const spans = plan.free
    .filter((free) => free.weekdays.includes(weekday))
    .map(({ span }) => ({ start: span.start, end: span.end ?? minutesADay }))
    .sort((one, other) => one.start - other.start);
  let total = 0;
  let reached = 0;
  for (const { start, end } of spans) {
    total += Math.max(0, end - Math.max(start, reached));
    reached = Math.max(reached, end);
  }
  return total;
}

function sumOf(costs: readonly NeedCost[], countedIn: 'minutes' | 'sessions'): number {
  return costs.reduce((total, cost) => total + (cost[countedIn] ?? 0), 0);
}

function hourLimits(
  plan: JournalPlan,
  rules: readonly Rule[],
  costs: readonly NeedCost[],
): readonly WeekOverrun[] {
  const capRules = rules.flatMap(({ subject, cap, written }) =>
    subject === 'any' && cap && written ? [{ minutes: cap.minutes, place: entryPlace(written) }] : [],
  );
  const cap = capRules.sort((one, other) => one.minutes - other.minutes)[0];
  const free = plan.free[0];
  const place = free ? entryPlace(free) : cap?.place;
  if (!place) return [];
  const days = weekdays
    .map((weekday) => Math.min(free ? freeMinutes(plan, weekday) : minutesADay, cap?.minutes ?? minutesADay))
    .sort((one, other) => other - one);
  const restDays = Math.max(
    0,
    ...rules.map(({ subject, min }) => (subject === 'rest-day' ? (min?.count ?? 0) : 0)),
  );
  const add = (some: readonly number[]) => some.reduce((total, minutes) => total + minutes, 0);
  const training = costs.filter(({ isRecovery }) => !isRecovery);
  const whole = { asked: sumOf(costs, 'minutes'), allowed: add(days) };
  const trained = { asked: sumOf(training, 'minutes'), allowed: add(days.slice(0, 7 - restDays)) };
  const base = { countedIn: 'minutes', place } as const;
  if (whole.asked > whole.allowed) {
    return [{ ...base, ...whole, by: free ? 'free-hours' : 'cap', costs }];
  }
  return trained.asked > trained.allowed
    ? [{ ...base, ...trained, by: free ? 'free-hours-without-rest-days' : 'cap', costs: training }]
    : [];
}

/** The needs whose sessions a rule about `subject` counts. A need without a rating counts as hard, as its sessions do. */
function countedBy(subject: string, plan: JournalPlan, costs: readonly NeedCost[]): readonly NeedCost[] {
  const about = ruleSubject(subject, plan);
  return costs.filter(({ need, isRecovery }) => {
    switch (about.about) {
      case 'any':
        return !isRecovery;
      case 'hard':
        return !isRecovery && (need.rating ?? hardEffort) >= hardEffort;
      case 'kind':
        return kindsOf(need.kind, plan.kinds).includes(about.name);
      case 'goal':
        return need.goal === about.name;
      default:
        return false;
    }
  });
}

function ruleLimits(
  plan: JournalPlan,
  rules: readonly Rule[],
  costs: readonly NeedCost[],
): readonly WeekOverrun[] {
  return rules.flatMap(({ subject, max, written }): readonly WeekOverrun[] => {
    if (!max || !written) return [];
    const countedIn = max.count === undefined ? 'minutes' : 'sessions';
    const allowed = max.count ?? max.minutes;
    const counted = countedBy(subject, plan, costs);
    const asked = sumOf(counted, countedIn);
    if (asked <= allowed) return [];
    const place = { note: written.note, range: written.entry.max?.range ?? entryPlace(written).range };
    return [{ countedIn, by: 'rule', subject, asked, allowed, costs: counted, place }];
  });
}

/**
 * Where the needs of `week` together ask for more than an ordinary week can hold: more minutes than the free hours
 * (within the day's cap, without the days kept for rest), or more than the `max:` of a rule. Trips and other busy
 * days are left out: they are no ordinary week. Gaps are left to planning, so a week in which nothing is found here
 * may still not work out.
 */
export function weekOverruns(
  plan: JournalPlan,
  rules: readonly Rule[],
  week: IsoWeek,
): readonly WeekOverrun[] {
  const costs = needCosts(plan, week);
  return [...hourLimits(plan, rules, costs), ...ruleLimits(plan, rules, costs)];
}
