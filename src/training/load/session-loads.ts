import type { Rating } from '../../notation/entries';
import type { DayNumber, IsoDate } from '../../notation/time/iso-date';
import type { SessionFacts } from '../session-facts';
import { type Load, sessionLoad } from '../statistics/session-load';

/** The load of one session that was done. */
export interface SessionLoad {
  readonly facts: SessionFacts;
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly kind: string;
  readonly regions: readonly string[];
  /** As the athlete rated it; a need's rating is a plan, and says nothing about how hard it was. */
  readonly rating?: Rating;
  readonly minutes?: number;
  /** Rating x minutes, or `undefined` when either is not known. */
  readonly load: Load;
}

/** The load of a session from its own rating and its minutes; those of its need or routine when it says none. */
export function loadOf(facts: SessionFacts): SessionLoad {
  const rating = facts.effortFrom === 'session' ? facts.effort : undefined;
  return {
    facts,
    date: facts.session.date,
    day: facts.session.day,
    kind: facts.session.kind,
    regions: facts.regions,
    ...(rating === undefined ? {} : { rating }),
    ...(facts.minutes === undefined ? {} : { minutes: facts.minutes }),
    load: sessionLoad(rating, facts.minutes),
  };
}

/** The loads of those sessions that were done, in their order. Only a done session has loaded anybody. */
export function sessionLoads(sessions: readonly SessionFacts[]): readonly SessionLoad[] {
  return sessions.filter(({ state }) => state === 'done').map(loadOf);
}
