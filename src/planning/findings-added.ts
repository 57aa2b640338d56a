import type { Journal } from '../journal/journal';
import type { DayNumber } from '../notation/time/iso-date';
import { type IsoWeek, isoWeekOfDay } from '../notation/time/iso-week';
import { checkWeekIn } from '../training/check-week';
import type { Finding } from '../training/finding';
import { type CheckContext, type CheckOptions, checkContext } from '../training/week-under-check';
import { journalWithSessions, type SessionsChanged } from './journal-with-sessions';

/** What a finding is about, and how bad it is; the larger amount of one subject is the worse. */
interface Weight {
  readonly about: string;
  readonly amount: number;
}

function amountOf(value: string | number | undefined): number {
  return typeof value === 'number' ? value : 0;
}

/** Findings of a whole week or day are one and the same wherever they stand; the others go by their places. */
function weigh({ code, note, range, facts, related }: Finding): Weight {
  const subject = [facts.week, facts.date, facts.subject, facts.askedBy, facts.goal].join(' ');
  switch (code) {
    case 'day-over-cap':
      return { about: `${code} ${subject}`, amount: amountOf(facts.minutes) };
    case 'week-over-maximum':
      return { about: `${code} ${subject}`, amount: amountOf(facts.held) };
    case 'week-under-minimum':
      return { about: `${code} ${subject} ${note} ${range.start}`, amount: -amountOf(facts.held) };
    case 'no-recovery-session':
    case 'no-rest-day':
      return { about: `${code} ${subject}`, amount: -amountOf(facts.held) };
    default: {
      const places = [{ note, range }, ...related].map((place) => `${place.note}:${place.range.start}`);
      return { about: `${code} ${places.join(' ')}`, amount: 0 };
    }
  }
}

/** The findings of `after` that `before` has not, or has less of. */
export function worseFindings(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const known = new Map<string, number>();
  for (const finding of before) {
    const { about, amount } = weigh(finding);
    known.set(about, Math.max(amount, known.get(about) ?? Number.NEGATIVE_INFINITY));
  }
  return after.filter((finding) => {
    const { about, amount } = weigh(finding);
    return amount > (known.get(about) ?? Number.NEGATIVE_INFINITY);
  });
}

/**
 * Whether a finding that a change would add speaks against the change. A week that lacks something is no reason:
 * what is missing can be added, and a first session in an empty week makes it lack the rest.
 */
export function speaksAgainst({ code, severity }: Finding): boolean {
  if (code === 'week-under-minimum') return false;
  return severity !== 'information' || code === 'no-rest-day';
}

/** Days over which the longest gap of any rule or need reaches. */
export function longestReach(context: Pick<CheckContext, 'rules' | 'plan'>): number {
  const gaps = [...context.rules, ...context.plan.needs].map(({ gap }) => gap?.minutes ?? 0);
  return Math.ceil(Math.max(0, ...gaps) / 1440) + 1;
}

/** Every week that a change on one of `days` can touch: its own, and those into which a gap reaches. */
function weeksTouched(days: readonly DayNumber[], reach: number): readonly IsoWeek[] {
  const weeks = new Set<IsoWeek>();
  for (const day of days) {
    for (let ahead = 0; ahead < reach; ahead += 7) weeks.add(isoWeekOfDay(day + ahead));
    weeks.add(isoWeekOfDay(day + reach));
  }
  return [...weeks].sort();
}

/** Tells what changes of sessions would add to the findings of a journal. */
export type ChangeChecker = (changed: SessionsChanged) => readonly Finding[];

/**
 * A checker that asks the training layer's own week check. What is found without any change is worked out once a
 * week; make a new checker when a note has changed.
 */
export function changeChecker(journal: Journal, options: CheckOptions): ChangeChecker {
  const context = checkContext(journal, options);
  const reach = longestReach(context);
  const before = new Map<IsoWeek, readonly Finding[]>();
  const findingsBefore = (week: IsoWeek) => {
    const known = before.get(week) ?? checkWeekIn(context, week);
    before.set(week, known);
    return known;
  };
  return (changed) => {
    const days = [...changed.without, ...changed.added].map((session) => session.day);
    // Pain does not change with the sessions, and finding it takes a walk through the whole journal.
    const after: CheckContext = {
      ...checkContext(journalWithSessions(journal, changed), options),
      openPains: context.openPains,
    };
    return weeksTouched(days, reach).flatMap((week) =>
      worseFindings(findingsBefore(week), checkWeekIn(after, week)),
    );
  };
}
