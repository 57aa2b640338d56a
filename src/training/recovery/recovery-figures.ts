import type { BodyReport } from '../../journal/journal';
import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import { loads } from '../open-pain';
import type { SessionFacts } from '../session-facts';
import type { NotEstimable } from '../statistics/estimate';
import {
  type RecoveryInterval,
  type RecoveryReason,
  recoveryInterval,
} from '../statistics/recovery-interval';
import type { CheckContext } from '../week-under-check';
import { type GapSuggestion, gapSuggestion } from './gap-suggestion';
import { type CurrentGap, currentGap, type RecoverySubject, recoverySubjects } from './recovery-subject';
import { type SessionPair, sessionPairs } from './session-pairs';

/** What the notes say about the recovery of one kind or region. */
export interface RecoveryFigures {
  readonly subject: RecoverySubject;
  readonly current: CurrentGap | undefined;
  /** The evidence, in order of time. */
  readonly pairs: readonly SessionPair[];
  /** In how many pairs the gap was counted in whole days, as a time was missing. */
  readonly pairsInDays: number;
  readonly learned: RecoveryInterval | NotEstimable<RecoveryReason>;
  readonly suggestion?: GapSuggestion;
}

/** Settings of {@link recoveryFigures}. */
export interface RecoveryOptions {
  /** The chance of "still sore" that the athlete accepts, inside 0..1; the context's when left out, else 0.2. */
  readonly acceptedChance?: number;
  /** Weeks looked back on: as repeated bouts protect, old notes age. 52 when left out; no source. */
  readonly weeks?: number;
  /** The day before which sessions count: Monday of this week when left out, so that the answer stands all week. */
  readonly before?: IsoDate;
}

/** The default gap that the prior is centred on, for kinds and regions without one of their own too. */
export const PRIOR_GAP_HOURS = 48;
export const DEFAULT_ACCEPTED_CHANCE = 0.2;
export const WEEKS_OF_RECOVERY = 52;

/** First and last day whose sessions are read, or `undefined` before the journal has any. */
export function recoveryDays(
  context: CheckContext,
  options: RecoveryOptions = {},
): { readonly first: DayNumber; readonly last: DayNumber } | undefined {
  const span = context.journal.span();
  const monday = mondayOf(isoWeekOfDay(context.todayNumber));
  const before = options.before === undefined ? monday : dayNumber(options.before);
  const last = before - 1;
  if (!span || span.first > last) return undefined;
  return { first: Math.max(span.first, before - 7 * (options.weeks ?? WEEKS_OF_RECOVERY)), last };
}

function sessionsOf(context: CheckContext, first: DayNumber, last: DayNumber): readonly SessionFacts[] {
  const found: SessionFacts[] = [];
  for (let week = isoWeekOfDay(first); mondayOf(week) <= last; week = isoWeekOfDay(mondayOf(week) + 7)) {
    found.push(
      ...context.weeks(week).sessions.filter(({ session }) => session.day >= first && session.day <= last),
    );
  }
  return found;
}

function isPainful(
  subject: RecoverySubject,
  pairs: readonly SessionPair[],
  pains: readonly BodyReport[],
): boolean {
  const regions =
    subject.about === 'region' ? [subject.name] : [...new Set(pairs.flatMap(({ first }) => first.regions))];
  return pains.some((pain) => regions.some((region) => loads(region, pain.region)));
}

/**
 * What the notes say about recovery, for each kind and each region that was trained, kinds first. An association in
 * these notes, not a cause.
 */
export function recoveryFigures(
  context: CheckContext,
  options: RecoveryOptions = {},
): readonly RecoveryFigures[] {
  const days = recoveryDays(context, options);
  if (!days) return [];
  const sessions = sessionsOf(context, days.first, days.last);
  const reports = new Map<DayNumber, BodyReport[]>();
  for (const report of context.journal.bodyReports(days.first, days.last)) {
    reports.set(report.day, [...(reports.get(report.day) ?? []), report]);
  }
  const source = {
    sessions,
    plan: context.plan,
    timed: context.timed,
    reports: (day: DayNumber) => reports.get(day) ?? [],
  };
  return recoverySubjects(sessions).map((subject) => {
    const pairs = sessionPairs(source, subject);
    const current = currentGap(subject, context.rules, context.plan);
    const learned = recoveryInterval(pairs, {
      defaultGapHours: PRIOR_GAP_HOURS,
      acceptedChance: options.acceptedChance ?? context.acceptedChance ?? DEFAULT_ACCEPTED_CHANCE,
    });
    const mayShorten = !isPainful(subject, pairs, context.openPains());
    const suggestion =
      learned.status === 'estimated' ? gapSuggestion(subject, learned, current, mayShorten) : undefined;
    return {
      subject,
      current,
      pairs,
      pairsInDays: pairs.filter(({ countedIn }) => countedIn === 'days').length,
      learned,
      ...(suggestion ? { suggestion } : {}),
    };
  });
}
