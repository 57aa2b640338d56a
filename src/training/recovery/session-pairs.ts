import type { BodyReport, JournalPlan } from '../../journal/journal';
import type { Rating } from '../../notation/entries';
import type { DayNumber } from '../../notation/time/iso-date';
import type { TimedSession } from '../gap';
import { loadOf } from '../load/session-loads';
import { loads } from '../open-pain';
import type { SessionFacts } from '../session-facts';
import type { RecoveryPair } from '../statistics/recovery-interval';
import { BREAK_DAYS } from '../statistics/return-ramp';
import { type RecoverySubject, trains } from './recovery-subject';

/** Two consecutive sessions of a kind or region, and what the notes say of the body at the second. */
export interface SessionPair extends RecoveryPair {
  readonly first: SessionFacts;
  /** Done, or skipped for being sore. */
  readonly second: SessionFacts;
  /** Elapsed hours, or whole days when one of the two has no time. */
  readonly countedIn: 'hours' | 'days';
  /** The soreness of the second's day that counts. */
  readonly reports: readonly BodyReport[];
  readonly skippedForSore: boolean;
  /** Nothing says which regions the first session trained, so any soreness counts. */
  readonly anyRegion: boolean;
}

/** Soreness from this rating counts as still sore; soreness without a rating counts too. Common practice, no source. */
export const SORE_FROM: Rating = 3;

const skippedForSoreness = ({ state, session }: SessionFacts): boolean =>
  state === 'skipped' && session.entry.skipped?.value === 'sore';

/** What the first session of a pair has loaded; empty when nothing says. */
function regionsLoaded(first: SessionFacts, subject: RecoverySubject, plan: JournalPlan): readonly string[] {
  if (subject.about === 'region') return [subject.name];
  if (first.regions.length > 0) return first.regions;
  const ofKind = [...plan.routines.values()].filter(({ kind }) => kind === first.session.kind);
  return [...new Set(ofKind.flatMap(({ regions }) => regions))];
}

function gapHours(first: TimedSession, second: TimedSession): Pick<SessionPair, 'hours' | 'countedIn'> {
  if (first.times && second.times) {
    // Sessions that overlap have no gap between them at all.
    return { hours: Math.max(0, second.times.start - first.times.end) / 60, countedIn: 'hours' };
  }
  return { hours: 24 * (second.facts.session.day - first.facts.session.day), countedIn: 'days' };
}

/** What the pairs of a journal are read from. */
export interface PairSource {
  /** In order of day and time. */
  readonly sessions: readonly SessionFacts[];
  readonly plan: JournalPlan;
  timed(facts: SessionFacts): TimedSession;
  /** The body reports of a day. */
  reports(day: DayNumber): readonly BodyReport[];
}

/**
 * The pairs of consecutive sessions of a subject: a done one, and the next that was done or skipped for being sore.
 * It counts as still sore when the second was skipped for it, or when its day has `#sore` at 3/10 or above in a region
 * that the first has loaded; only tags count, prose is never guessed at. The notes do not tell soreness before a
 * session from soreness after it, so two sessions of one day are no pair; nor are two with a break of two weeks or
 * more between them.
 */
export function sessionPairs(source: PairSource, subject: RecoverySubject): readonly SessionPair[] {
  const pairs: SessionPair[] = [];
  let first: SessionFacts | undefined;
  for (const second of source.sessions) {
    const skippedForSore = skippedForSoreness(second);
    if (!trains(second, subject) || (second.state !== 'done' && !skippedForSore)) continue;
    const days = first ? second.session.day - first.session.day : 0;
    if (first && days > 0 && days < BREAK_DAYS) {
      const regions = regionsLoaded(first, subject, source.plan);
      const reports = source
        .reports(second.session.day)
        .filter(
          ({ kind, region, rating = SORE_FROM }) =>
            kind === 'sore' &&
            rating >= SORE_FROM &&
            (regions.length === 0 || regions.some((one) => loads(one, region))),
        );
      const { load } = loadOf(first);
      pairs.push({
        first,
        second,
        ...gapHours(source.timed(first), source.timed(second)),
        sore: skippedForSore || reports.length > 0,
        ...(load === undefined ? {} : { load }),
        reports,
        skippedForSore,
        anyRegion: regions.length === 0,
      });
    }
    if (second.state === 'done') first = second;
  }
  return pairs;
}
