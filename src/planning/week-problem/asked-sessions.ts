import type { Session } from '../../journal/journal';
import type { DayNumber } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { SessionFacts } from '../../training/session-facts';
import { isToDo } from '../../training/session-state';
import { type CheckContext, checkContext } from '../../training/week-under-check';
import { journalWithSessions } from '../journal-with-sessions';
import { sessionIn } from '../remedies/legal-slots';
import { type Demand, demandsOf, needsByImportance, type SessionMaker, sessionMaker } from './demands';
import type { Habits } from './kept-habits';

/** Like sessions that are to be placed in one week. */
export interface AskedSessions {
  readonly week: IsoWeek;
  readonly count: number;
  readonly importance: number | undefined;
  /** How one of them reads to the rules, wherever it stands. */
  readonly facts: SessionFacts;
  readonly minutes: number;
  readonly make: SessionMaker;
  readonly what: /** Sessions that the week does not hold yet. */
    | { readonly is: 'new'; readonly demand: Demand }
    /** A session that stands and may move. */
    | { readonly is: 'moving'; readonly session: Session };
}

/** Sessions placed change what the others count for; so few rounds see them all counted again. */
const mostRounds = 12;

/** Everything about a session that the rules look at. */
function signatureOf({ kinds, goals, regions, countsFor, effort, isRecovery }: SessionFacts): string {
  return JSON.stringify([
    kinds,
    [...goals].sort(),
    [...regions].sort(),
    countsFor.map(({ note, entry }) => [note, entry.range.start]),
    effort,
    isRecovery,
  ]);
}

/** A demand, and how its session reads among all others. */
interface Counted {
  readonly demand: Demand;
  readonly make: SessionMaker;
  readonly session: Session;
}

/** The demands as sessions on the last day of the week, where they leave to the others what those count for. */
function asSessions(demands: readonly Demand[], sunday: DayNumber, from: number): readonly Counted[] {
  return demands.flatMap((demand, index) => {
    const make = sessionMaker(demand, `planned/${from + index}`);
    return make ? [{ demand, make, session: make(sunday, undefined) }] : [];
  });
}

/**
 * What `week` lacks, as sessions to place: the needs of its open goals, the needs of every week and the minima of
 * rules, minus what stands. What each session counts for is worked out with all of them in the week, by the training
 * layer itself, and asked again until nothing is missing.
 * @param only Which demands are looked at; all when left out.
 */
export function newSessions(
  context: CheckContext,
  week: IsoWeek,
  habits: Habits,
  only: (demand: Demand) => boolean = () => true,
): readonly AskedSessions[] {
  const { journal, plan, today, zone } = context;
  const sunday = context.weeks(week).monday + 6;
  let counted: readonly Counted[] = [];
  let withAll = context;
  for (let round = 0; round < mostRounds; round += 1) {
    const more = asSessions(demandsOf(withAll, week, habits).filter(only), sunday, counted.length);
    if (more.length === 0) break;
    counted = [...counted, ...more];
    const added = counted.map(({ session }) => session);
    withAll = checkContext(journalWithSessions(journal, { without: [], added }), { today, zone });
  }
  const groups = new Map<string, AskedSessions>();
  for (const { demand, make, session } of counted) {
    const facts = withAll.weeks(week).standing.find((one) => one.session === session);
    if (!facts) continue;
    const key = `${demand.group} ${signatureOf(facts)}`;
    const known = groups.get(key);
    groups.set(key, {
      week,
      count: (known?.count ?? 0) + 1,
      importance: demand.importance,
      facts: known?.facts ?? facts,
      minutes: demand.minutes,
      make: known?.make ?? make,
      what: { is: 'new', demand },
    });
  }
  const last = needsByImportance(plan).length + plan.rules.length;
  return [...groups.values()].sort(
    (one, other) => (one.importance ?? last + 1) - (other.importance ?? last + 1),
  );
}

/**
 * Whether a session may be given another place when the rest of a week is arranged anew: it is still to do, and not
 * agreed with somebody else. What was missed must be placed again, company or not.
 */
export function mayMove({ state, session }: SessionFacts): boolean {
  return isToDo(state) && (state === 'overdue' || session.entry.with.length === 0);
}

/** A session that stands in the week, as one to place. */
export function movingSession(context: CheckContext, week: IsoWeek, facts: SessionFacts): AskedSessions {
  const { session, countsFor } = facts;
  const order = needsByImportance(context.plan);
  const ranks = countsFor.map((need) => order.indexOf(need)).filter((rank) => rank >= 0);
  return {
    week,
    count: 1,
    // What the athlete has planned on top of all needs is wanted as well, after these.
    importance: ranks.length > 0 ? Math.min(...ranks) : order.length + context.rules.length,
    facts,
    minutes: facts.minutes ?? 0,
    make: (day, start) => sessionIn(session, { day, start }),
    what: { is: 'moving', session },
  };
}
