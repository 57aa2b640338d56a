import { isoWeekOf } from '../../notation/time/iso-week';
import type { Finding, Message, RelatedPlace } from '../finding';
import { entryPlace, related } from '../session-place';
import { type NeedCost, type WeekOverrun, weekOverruns } from '../week-hours';
import type { CheckContext } from '../week-under-check';
import { message, minutesInWords } from '../wording';
import type { HistoryRule } from './history-rule';

type Counted = WeekOverrun['countedIn'];

function amount(value: number, countedIn: Counted): string | number {
  return countedIn === 'minutes' ? minutesInWords(value) : value;
}

/** What each goal costs, most first; needs of every week are one more. */
function perGoal(costs: readonly NeedCost[], countedIn: Counted): readonly (readonly [string, number])[] {
  const sums = new Map<string, number>();
  for (const cost of costs) {
    const name = cost.need.goal ?? 'every week';
    sums.set(name, (sums.get(name) ?? 0) + (cost[countedIn] ?? 0));
  }
  return [...sums].sort(([, one], [, other]) => other - one);
}

function templateFor({ countedIn, by }: WeekOverrun): string {
  if (countedIn === 'sessions') {
    return 'The needs of a week ask for {0} sessions under {3}; the rule allows {1}, {2} fewer ({4})';
  }
  switch (by) {
    case 'free-hours':
      return 'The needs of a week ask for {0}; its free hours hold {1}, {2} less ({4})';
    case 'free-hours-without-rest-days':
      return 'The needs of a week ask for {0} of training; its free hours hold {1} beside the rest days, {2} less ({4})';
    case 'cap':
      return 'The needs of a week ask for {0}; the cap of a day leaves {1}, {2} less ({4})';
    case 'rule':
      return 'The needs of a week ask for {0} under {3}; the rule allows {1}, {2} less ({4})';
  }
}

function sentence(overrun: WeekOverrun): Message {
  const { asked, allowed, countedIn, subject = '', costs } = overrun;
  const shares = perGoal(costs, countedIn).map(([name, value]) => `${name} ${amount(value, countedIn)}`);
  return message(
    templateFor(overrun),
    amount(asked, countedIn),
    amount(allowed, countedIn),
    amount(asked - allowed, countedIn),
    subject,
    shares.join(', '),
  );
}

function costPlace({ need, sessions, minutes }: NeedCost, countedIn: Counted): RelatedPlace {
  const what =
    countedIn === 'minutes'
      ? message('{0}: {1} a week', need.kind, minutes === undefined ? 'no length' : minutesInWords(minutes))
      : message('{0}: {1} sessions a week', need.kind, sessions ?? 'an unknown number of');
  return related(entryPlace(need), what);
}

function finding(overrun: WeekOverrun, week: string): Finding {
  const { asked, allowed, countedIn, by, subject, costs, place } = overrun;
  return {
    code: 'goal-hours',
    severity: 'information',
    ...place,
    message: sentence(overrun),
    facts: {
      week,
      countedIn,
      limitedBy: by,
      ...(subject === undefined ? {} : { subject }),
      asked,
      allowed,
      tooMuch: asked - allowed,
      ...Object.fromEntries(
        perGoal(costs, countedIn).map(([name, value]) => [`costOf ${name}`, value] as const),
      ),
    },
    related: costs.map((cost) => costPlace(cost, countedIn)),
    remedies: [],
  };
}

/**
 * The open goals together need more minutes or sessions than an ordinary week has free hours for, or than a rule
 * allows. It stands on the first `#free` line, the cap or the `max:` that is too small, and says what each goal costs.
 *
 * A journal that breaks it:
 *
 *     hours.md
 *     - #free tue thu 18:00-19:30
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 *     - #need flexibility 2/week 75min 7/10
 *     - #goal handstand by:2026-09-30
 *     - #why the dinner
 *     - #metric hold from:8s to:30s
 *     - #need skill 2/week 45min 5/10 -- 240 min in all, and 180 min are free
 *
 * A journal that does not:
 *
 *     hours.md
 *     - #free tue thu 18:00-20:00
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 *     - #need flexibility 2/week 75min 7/10
 *     - #goal handstand by:2026-09-30
 *     - #why the dinner
 *     - #metric hold from:8s to:30s
 *     - #need skill 2/week 45min 5/10
 */
export const goalHours: HistoryRule = {
  code: 'goal-hours',
  inputs: ({ plan, today }) => [plan, isoWeekOf(today)],
  check: ({ plan, rules, today }: CheckContext) => {
    const week = isoWeekOf(today);
    return weekOverruns(plan, rules, week).map((overrun) => finding(overrun, week));
  },
};
