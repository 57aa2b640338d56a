import { dayNumber } from '../../notation/time/iso-date';
import { type PlannedSession, plannedSessions } from '../adherence/planned-sessions';
import { DAYS_TO_MARK, type Slide, slide } from '../adherence/slide';
import { latestBreak } from '../adherence/training-break';
import type { Finding, RemedyName } from '../finding';
import { related, sessionPlace } from '../session-place';
import type { CheckContext } from '../week-under-check';
import { message } from '../wording';
import type { HistoryRule } from './history-rule';

/** Weeks of sessions that the usual share is taken from. No source. */
export const WEEKS_OF_ADHERENCE = 26;

/** A return after a break is offered for so many days after it: the weeks of the ramp. */
const daysOfReturn = 28;
const mostRelated = 5;
/** Rarer false alarms are not counted out. */
const rareEnough = 1000;

function days({ journal, todayNumber }: CheckContext) {
  const first = todayNumber - 7 * WEEKS_OF_ADHERENCE;
  return { first: Math.max(first, journal.span()?.first ?? first), last: todayNumber - 1 };
}

/** The planned sessions of the last half year, up to yesterday: one of today can still be done. */
export function recentPlannedSessions(context: CheckContext): readonly PlannedSession[] {
  const { first, last } = days(context);
  return plannedSessions(context.weeks, first, last);
}

function remediesFor(sessions: readonly PlannedSession[], today: number): readonly RemedyName[] {
  const found = latestBreak(sessions, today);
  const isRecent =
    found !== undefined && (found.backOn === undefined || today - dayNumber(found.backOn) < daysOfReturn);
  return isRecent ? ['ramp-back', 'smaller-next-week'] : ['smaller-next-week'];
}

function sentence({ recent, usual, sessionsToFalseAlarm }: Slide) {
  const marked = recent.unmarked === 0 ? '' : ' ({4} not marked)';
  const isRare = sessionsToFalseAlarm > rareEnough;
  const chance = isRare ? 'less than once in {3} sessions' : 'about once in {3} sessions';
  return message(
    `Fewer done lately: {0} of the last {1} planned sessions${marked}, usually {2} %. Change the plan? By chance alone this is said ${chance}`,
    recent.done,
    recent.n,
    Math.round(100 * usual.proportion),
    isRare ? rareEnough : Math.round(sessionsToFalseAlarm),
    recent.unmarked,
  );
}

function isLongUnmarked(outcome: PlannedSession['outcome'], day: number, today: number): boolean {
  return outcome === 'unmarked' && day < today - DAYS_TO_MARK;
}

function finding(found: Slide, sessions: readonly PlannedSession[], today: number): readonly Finding[] {
  const { recent, since } = found;
  const from = since === undefined ? today : dayNumber(since);
  const notDone = sessions
    .filter(
      ({ outcome, day }) => day >= from && (outcome === 'missed' || isLongUnmarked(outcome, day, today)),
    )
    .reverse();
  const [latest, ...earlier] = notDone;
  if (!latest) return [];
  return [
    {
      code: 'slipping',
      severity: 'information',
      ...sessionPlace(latest.facts.session),
      message: sentence(found),
      facts: {
        done: recent.done,
        planned: recent.n,
        unmarked: recent.unmarked,
        usualShare: found.usual.proportion,
        usualSessions: found.usual.n,
        score: found.score,
        limit: found.limit,
        sessionsToFalseAlarm: found.sessionsToFalseAlarm,
        ...(since === undefined ? {} : { since }),
      },
      related: earlier
        .slice(0, mostRelated)
        .map(({ facts: { session } }) =>
          related(sessionPlace(session), message('{0}, {1}, not done', session.kind, session.date)),
        ),
      remedies: remediesFor(sessions, today),
    },
  ];
}

/**
 * Fewer planned sessions are done than the athlete usually does. The score of done (-1) and missed (+2) sessions has
 * come to its limit; ill, injured, work and travel are left out. It stands on the latest session that was not done,
 * and takes twenty sessions to know what is usual.
 *
 * A journal that breaks it, on Wednesday 2026-02-25:
 *
 *     2026-01-05.md ... 2026-02-01.md
 *     - [x] #session skill 18:30 45min 5/10
 *     2026-02-16.md ... 2026-02-22.md
 *     - [ ] #session skill 18:30 45min 5/10 skipped:tired -- seven in a row, after 28 that were done
 *
 * A journal that does not:
 *
 *     2026-01-05.md ... 2026-02-01.md
 *     - [x] #session skill 18:30 45min 5/10
 *     2026-02-16.md ... 2026-02-22.md
 *     - [ ] #session skill 18:30 45min 5/10 skipped:ill
 */
export const slipping: HistoryRule = {
  code: 'slipping',
  inputs: (context) => {
    const { first, last } = days(context);
    return [context.plan, context.today, ...context.journal.sessions(first, last)];
  },
  check(context) {
    const sessions = recentPlannedSessions(context);
    const found = slide(sessions, context.todayNumber);
    return found.status === 'estimated' && found.isSliding
      ? finding(found, sessions, context.todayNumber)
      : [];
  },
};
