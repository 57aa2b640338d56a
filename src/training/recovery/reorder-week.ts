import type { BodyReport } from '../../journal/journal';
import type { DayNumber, IsoDate } from '../../notation/time/iso-date';
import { instantOf } from '../../notation/time/zoned-time';
import type { Message } from '../finding';
import { gapBetween, missingMinutes, type TimedSession } from '../gap';
import { loads } from '../open-pain';
import type { SessionFacts } from '../session-facts';
import { isToDo } from '../session-state';
import type { SessionTimes } from '../session-times';
import type { CheckContext } from '../week-under-check';
import { message, minutesInWords, weekdayName } from '../wording';
import { type GapAsker, sorenessAsker, writtenAskers } from './gap-askers';
import { type RecoverySubject, recoverySubjects } from './recovery-subject';
import { type SessionPair, sessionPairs } from './session-pairs';

/** A session at a place in the week. */
export interface OrderedSession {
  readonly date: IsoDate;
  readonly kind: string;
  readonly facts: SessionFacts;
}

/** Two sessions to be swapped so that the body has more time between sessions of one kind. */
export interface ReorderSuggestion {
  readonly swap: readonly [earlier: SessionFacts, later: SessionFacts];
  /** The sessions as they would stand, in order of time. */
  readonly order: readonly OrderedSession[];
  /** Sore pairs that ask for it; empty when only rules do. */
  readonly sore: readonly SessionPair[];
  readonly reasons: readonly Message[];
  /** How much time the gaps lack together, now and after the swap, in hours. */
  readonly lackingHours: { readonly now: number; readonly after: number };
}

/** What {@link reorderWeek} may do. */
export interface ReorderOptions {
  /** Which sessions may change places: those still to do and without company, when left out. */
  readonly mayMove?: (facts: SessionFacts) => boolean;
}

interface Placed {
  readonly facts: SessionFacts;
  readonly timed: TimedSession;
}

interface Lack {
  readonly pairs: number;
  readonly minutes: number;
}

/** A session with company stands when the company can. */
export function standsAlone(facts: SessionFacts): boolean {
  return facts.session.entry.with.length === 0;
}

/** The times `facts` would have at the place of `place`: its start, and its own length. */
function timesAt(facts: SessionFacts, place: SessionFacts, zone: string): SessionTimes | undefined {
  const span = place.session.entry.span?.value;
  if (!span) return undefined;
  const start = instantOf(place.session.date, span.start, zone);
  return { start, end: start + (facts.minutes ?? 0) };
}

function placedAt(facts: SessionFacts, place: SessionFacts, context: CheckContext): Placed {
  if (facts === place) return { facts, timed: context.timed(facts) };
  const { date, day } = place.session;
  const moved: SessionFacts = { ...facts, session: { ...facts.session, date, day } };
  return { facts, timed: { facts: moved, times: timesAt(facts, place, context.zone) } };
}

/** What the gaps between each session and the nearest earlier one of the same sort lack. */
function lackOf(placed: readonly Placed[], askers: readonly GapAsker[]): Lack {
  let pairs = 0;
  let minutes = 0;
  for (const asker of askers) {
    const kept = placed.filter(({ facts }) => asker.keeps(facts));
    for (const [index, later] of kept.entries()) {
      const earlier = kept[index - 1];
      const missing = earlier ? missingMinutes(gapBetween(earlier.timed, later.timed, asker.asked)) : 0;
      if (missing > 0) {
        pairs += 1;
        minutes += missing;
      }
    }
  }
  return { pairs, minutes };
}

interface Candidate {
  readonly swap: readonly [earlier: SessionFacts, later: SessionFacts];
  readonly order: readonly SessionFacts[];
  readonly lack: Lack;
}

function compareLack(one: Lack, other: Lack): number {
  return one.pairs - other.pairs || one.minutes - other.minutes;
}

function compareCandidates(one: Candidate, other: Candidate): number {
  const days = ({ swap: [earlier, later] }: Candidate): number => later.session.day - earlier.session.day;
  return compareLack(one.lack, other.lack) || days(one) - days(other);
}

/** What a sore pair says, in one sentence. */
export function soreWords({
  first,
  second,
  hours,
  countedIn,
  reports,
  skippedForSore,
}: SessionPair): Message {
  const days = second.session.day - first.session.day;
  const gap = countedIn === 'hours' ? minutesInWords(60 * hours) : days === 1 ? '1 day' : `${days} days`;
  const names = [...new Set(reports.map(({ region }) => region))].join(', ');
  const [kind, day] = [second.session.kind, weekdayName(second.session.day)];
  const [firstKind, firstDay] = [first.session.kind, weekdayName(first.session.day)];
  return skippedForSore
    ? message(
        "{0}'s {1} session, {2} after {3}'s {4}, was skipped for being sore",
        day,
        kind,
        gap,
        firstDay,
        firstKind,
      )
    : message("Sore on {0}, {1} after {2}'s {3} session: {4}", day, gap, firstDay, firstKind, names);
}

/** Soreness that lasts longer is no matter of the order of a week. No source. */
const longestGapHours = 72;

/** Whether the second session asked something of what was still sore; where nothing says what it trains, it did. */
function mattered({ second, reports, skippedForSore }: SessionPair): boolean {
  const { regions } = second;
  return (
    skippedForSore ||
    regions.length === 0 ||
    reports.some((report) => regions.some((region) => loads(region, report.region)))
  );
}

/** A sore pair, and the kind or region that shows it. */
export interface SorePair {
  readonly subject: RecoverySubject;
  readonly pair: SessionPair;
}

/**
 * The pairs of sessions after whose first one the body was still sore, less than three days later, with the kinds and
 * regions that show them.
 * @param sessions in order of time; none is no pair
 */
export function sorePairsOf(context: CheckContext, sessions: readonly SessionFacts[]): readonly SorePair[] {
  if (sessions.length < 2) return [];
  const first = Math.min(...sessions.map(({ session }) => session.day));
  const last = Math.max(...sessions.map(({ session }) => session.day));
  const reports = context.journal.bodyReports(first, last);
  const source = {
    sessions,
    plan: context.plan,
    timed: context.timed,
    reports: (day: DayNumber): readonly BodyReport[] => reports.filter((one) => one.day === day),
  };
  return recoverySubjects(sessions).flatMap((subject) =>
    sessionPairs(source, subject)
      .filter((pair) => pair.sore && pair.hours < longestGapHours && mattered(pair))
      .map((pair) => ({ subject, pair })),
  );
}

/**
 * The one swap of two sessions after which the gaps that rules, needs and soreness ask for lack least: first the
 * fewest gaps that are too short, then the least time, then the nearest days. `undefined` when no swap mends anything.
 * Whether the hours of the day allow it is for planning.
 *
 * That flexibility, flexibility, strength with soreness on the second day becomes flexibility, strength, flexibility
 * is common practice; no source.
 *
 * @param sessions in order of time: those of the week, and neighbours that stay where they are
 */
export function reorderWeek(
  context: CheckContext,
  sessions: readonly SessionFacts[],
  options: ReorderOptions = {},
): ReorderSuggestion | undefined {
  const mayMove = options.mayMove ?? ((facts) => isToDo(facts.state) && standsAlone(facts));
  if (sessions.length < 2) return undefined;
  const sorePairs = sorePairsOf(context, sessions);
  const askers = [
    ...writtenAskers(context.rules, context.plan),
    ...sorePairs.map(({ subject, pair }) => sorenessAsker(subject, pair)),
  ];
  const lack = (order: readonly SessionFacts[]): Lack =>
    lackOf(
      order.map((facts, index) => placedAt(facts, sessions[index] ?? facts, context)),
      askers,
    );
  const now = lack(sessions);
  const movable = sessions.filter(mayMove);
  const candidates = movable.flatMap((one, index) =>
    movable.slice(index + 1).flatMap((other): readonly Candidate[] => {
      if (one.session.day === other.session.day) return [];
      const order = sessions.map((facts) => (facts === one ? other : facts === other ? one : facts));
      return [{ swap: [one, other], order, lack: lack(order) }];
    }),
  );
  const [best] = candidates.filter((one) => compareLack(one.lack, now) < 0).sort(compareCandidates);
  if (!best) return undefined;
  const sore = [...new Map(sorePairs.map(({ pair }) => [pair.second, pair])).values()];
  return {
    swap: best.swap,
    order: best.order.map((facts, index) => ({
      date: (sessions[index] ?? facts).session.date,
      kind: facts.session.kind,
      facts,
    })),
    sore,
    reasons: sore.map(soreWords),
    lackingHours: { now: now.minutes / 60, after: best.lack.minutes / 60 },
  };
}
