import type { Need } from '../../journal/journal';
import type { PerWeek } from '../../notation/entries';
import type { DayNumber } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import type { FindingCode } from '../../training/finding';
import { gapBetween, missingMinutes, type TimedSession } from '../../training/gap';
import { loads } from '../../training/open-pain';
import { firstAbove } from '../../training/per-week';
import { isUnder, keepsGap, type RuleSubject, ruleSubject } from '../../training/rule-subject';
import { isHard, type SessionFacts } from '../../training/session-facts';
import { standingBetween } from '../../training/training-week';
import { totalMinutes } from '../../training/week-summary';
import type { CheckContext } from '../../training/week-under-check';
import { longestReach } from '../findings-added';
import type { Place } from './place';

/** What the rules say to a place, beside the sessions that stand and those placed so far. */
export interface PlacementRules {
  /** The rule that forbids the place beside what stands already. */
  besideStanding(place: Place): FindingCode | undefined;
  /** The rule between two places that both would stand. */
  between(one: Place, other: Place): FindingCode | undefined;
  /** The rule about whole days or the whole week that forbids the place when all of `placed` stand. */
  inWeek(place: Place, placed: readonly Place[]): FindingCode | undefined;
  /** `false` when the gaps alone leave too little room for so many sessions of each sort, wherever they go. */
  canHold(sorts: readonly Sort[]): boolean;
}

/** So many sessions, each to stand at one of the places. */
export interface Sort {
  readonly count: number;
  readonly places: readonly Place[];
}

interface Asker {
  readonly asked: LengthOfTime;
  keeps(facts: SessionFacts): boolean;
}

interface Maximum {
  readonly most: PerWeek;
  counts(facts: SessionFacts): boolean;
}

function gapAskers({ rules, plan }: CheckContext): readonly Asker[] {
  return [
    ...rules.flatMap(({ gap, subject }): Asker[] => {
      const about = ruleSubject(subject, plan);
      return gap ? [{ asked: gap, keeps: (facts) => keepsGap(about, facts) }] : [];
    }),
    ...plan.needs.flatMap((need): Asker[] =>
      need.gap ? [{ asked: need.gap, keeps: (facts) => facts.countsFor.includes(need) }] : [],
    ),
  ];
}

function maxima({ rules, plan }: CheckContext): readonly Maximum[] {
  return [
    ...rules.flatMap(({ max, subject }): Maximum[] => {
      const about = ruleSubject(subject, plan);
      return max ? [{ most: max, counts: (facts) => isUnder(about, facts) }] : [];
    }),
    ...plan.needs.flatMap((need: Need): Maximum[] =>
      need.max ? [{ most: need.max, counts: (facts) => facts.countsFor.includes(need) }] : [],
    ),
  ];
}

/** Earlier first; sessions without a time end their day. */
function isEarlier(one: TimedSession, other: TimedSession): boolean {
  const a = one.facts.session;
  const b = other.facts.session;
  if (a.day !== b.day) return a.day < b.day;
  return (a.entry.span?.value.start ?? Infinity) <= (b.entry.span?.value.start ?? Infinity);
}

function pairRule(one: TimedSession, other: TimedSession, askers: readonly Asker[]): FindingCode | undefined {
  const [earlier, later] = isEarlier(one, other) ? [one, other] : [other, one];
  if (earlier.times && later.times) {
    const together = later.times.start === earlier.times.start;
    if (together || later.times.start < earlier.times.end) return 'overlapping-sessions';
  }
  const short = askers.some(
    ({ asked, keeps }) =>
      keeps(earlier.facts) && keeps(later.facts) && missingMinutes(gapBetween(earlier, later, asked)) > 0,
  );
  return short ? 'gap-too-short' : undefined;
}

/**
 * How many of `places` can stand at most when each keeps a gap from the one before. Taking the one that ends first,
 * again and again, gives the largest number (the classic rule for scheduling intervals).
 */
function mostApart(places: readonly Place[], asker: Asker, enough: number): number {
  const inOrder = [...places].sort((one, other) => endOf(one) - endOf(other));
  let last: Place | undefined;
  let count = 0;
  for (const place of inOrder) {
    if (last && missingMinutes(gapBetween(last.timed, place.timed, asker.asked)) > 0) continue;
    last = place;
    count += 1;
    if (count >= enough) break;
  }
  return count;
}

/** When a place ends; without a time at the end of its day. */
function endOf({ day, timed }: Place): number {
  return timed.times?.end ?? (day + 1) * 1440;
}

/** Whether hard training on the place's day would load what hurts. */
function hurts({ timed: { facts } }: Place, context: CheckContext): boolean {
  if (!isHard(facts) || facts.regions.length === 0) return false;
  return context
    .openPains()
    .some(
      (pain) => pain.day <= facts.session.day && facts.regions.some((region) => loads(region, pain.region)),
    );
}

/**
 * The training layer's rules, put so that one place after another can be asked about at little cost. They are its
 * own measures of gaps, subjects and amounts; its week check has the last word on the finished week.
 */
export function placementRules(context: CheckContext, week: IsoWeek): PlacementRules {
  const { plan, rules } = context;
  const { monday, standing } = context.weeks(week);
  const reach = longestReach(context);
  const askers = gapAskers(context);
  const most = maxima(context);
  const caps = rules.flatMap(({ cap, subject }): readonly { cap: number; subject: RuleSubject }[] =>
    cap ? [{ cap: cap.minutes, subject: ruleSubject(subject, plan) }] : [],
  );
  const restDays = Math.max(
    0,
    ...rules.flatMap(({ subject, min }) => (subject === 'rest-day' ? (min?.count ?? []) : [])),
  );
  const around = standingBetween(context.weeks, monday - reach, monday + 6 + reach).map(context.timed);

  function inWeek(place: Place, placed: readonly Place[]): FindingCode | undefined {
    const { facts } = place.timed;
    const all = [...standing, ...placed.map(({ timed }) => timed.facts), facts];
    for (const { cap, subject } of caps) {
      if (!isUnder(subject, facts)) continue;
      const ofDay = all.filter((one) => one.session.day === place.day && isUnder(subject, one));
      if (totalMinutes(ofDay) > cap) return 'day-over-cap';
    }
    for (const { most: amount, counts } of most) {
      if (counts(facts) && firstAbove(amount, all.filter(counts))) return 'week-over-maximum';
    }
    if (facts.isRecovery || restDays === 0) return undefined;
    const training = all.filter((one) => !one.isRecovery);
    const before = new Set<DayNumber>(training.slice(0, -1).map((one) => one.session.day));
    return !before.has(place.day) && 7 - (before.size + 1) < restDays ? 'no-rest-day' : undefined;
  }

  return {
    besideStanding(place) {
      if (hurts(place, context)) return 'open-pain';
      for (const other of around) {
        const code = pairRule(place.timed, other, askers);
        if (code) return code;
      }
      return inWeek(place, []);
    },
    between: (one, other) => pairRule(one.timed, other.timed, askers),
    inWeek,
    canHold: (sorts) =>
      askers.every((asker) => {
        const kept = sorts.filter(({ places }) => places[0] && asker.keeps(places[0].timed.facts));
        const asked = kept.reduce((sum, { count }) => sum + count, 0);
        const places = kept.flatMap((sort) => sort.places);
        return asked < 2 || mostApart(places, asker, asked) >= asked;
      }),
  };
}
