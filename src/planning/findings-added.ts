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

/** The findings of every week that a change touches, without the change and with it. */
export interface Comparison {
  readonly before: readonly Finding[];
  readonly after: readonly Finding[];
}

/** Compares the findings of a journal with those that it would have after changes of sessions. */
export type ChangeComparer = (changed: SessionsChanged) => Comparison;

/** Sessions under paths of their own, so that a finding on one is told from a finding on where it stood before. */
function underOwnPaths({ without, added }: SessionsChanged, journal: Journal): SessionsChanged {
  const apart = added.map((session, index) =>
    journal.note(session.note) ? { ...session, note: `changed/${index}` } : session,
  );
  return { without, added: apart };
}

/**
 * A comparer that asks the training layer's own week check. What is found without any change is worked out once a
 * week; make a new comparer when a note has changed.
 */
export function changeComparer(journal: Journal, options: CheckOptions): ChangeComparer {
  const context = checkContext(journal, options);
  const reach = longestReach(context);
  const known = new Map<IsoWeek, readonly Finding[]>();
  const findingsBefore = (week: IsoWeek) => {
    const findings = known.get(week) ?? checkWeekIn(context, week);
    known.set(week, findings);
    return findings;
  };
  return (changed) => {
    const days = [...changed.without, ...changed.added].map((session) => session.day);
    const weeks = weeksTouched(days, reach);
    const changedJournal = journalWithSessions(journal, underOwnPaths(changed, journal));
    // Pain does not change with the sessions, and finding it takes a walk through the whole journal.
    const after: CheckContext = { ...checkContext(changedJournal, options), openPains: context.openPains };
    return {
      before: weeks.flatMap(findingsBefore),
      after: weeks.flatMap((week) => checkWeekIn(after, week)),
    };
  };
}

/** Whether `finding` is gone from `after`, or tells of less there. */
export function isLessened(finding: Finding, after: readonly Finding[]): boolean {
  const { about, amount } = weigh(finding);
  return !after.map(weigh).some((one) => one.about === about && one.amount >= amount);
}

/** Tells what changes of sessions would add to the findings of a journal. */
export type ChangeChecker = (changed: SessionsChanged) => readonly Finding[];

/** As {@link changeComparer}, for those who want to know only what would be added. */
export function changeChecker(journal: Journal, options: CheckOptions): ChangeChecker {
  const compare = changeComparer(journal, options);
  return (changed) => {
    const { before, after } = compare(changed);
    return worseFindings(before, after);
  };
}
