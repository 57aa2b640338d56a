import type { Session } from '../../journal/journal';
import { present } from '../../notation/present';
import { addWeeks, isoWeekOf, isoWeekOfDay } from '../../notation/time/iso-week';
import type { Message } from '../../training/finding';
import { checkContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { journalWithSessions } from '../journal-with-sessions';
import { joined, separated } from '../plan-weeks/joined-messages';
import { placeWords } from '../plan-weeks/placed-reason';
import { bestPlaces } from '../solver/best-places';
import { type Objective, valueAt } from '../solver/order';
import { movingSession } from '../week-problem/asked-sessions';
import { buildProblem, daysToPlan } from '../week-problem/build-problem';
import { habitsBefore } from '../week-problem/kept-habits';
import type { Place } from '../week-problem/places';
import { type Slot, sessionIn } from './legal-slots';
import type { ToMend } from './remedy';

/** A place to which a session could go. */
export interface Move {
  readonly slot: Slot;
  /** What it costs, and what speaks for it. */
  readonly words: Message;
}

/** Places are asked one after the other; a session that fits nowhere shall not take long. */
const mostTried = 24;

/** What a place costs beside what stands now. */
function costWords(difference: Objective): readonly Message[] {
  const rows = valueAt(difference, 'row');
  const air = valueAt(difference, 'air');
  return [
    ...(rows > 0 ? [message('makes two hard days in a row')] : []),
    ...(rows < 0 ? [message('parts two hard days')] : []),
    ...(air > 0 ? [message('leaves less time to recover')] : []),
  ];
}

function inOneLine(words: readonly Message[]): Message | undefined {
  return words.length > 0 ? joined(separated(words, '; ')) : undefined;
}

/** What is asked about the places of a session. */
export interface MovesAsked {
  /** A place whose cost is wanted, however good it is. */
  readonly first: Slot;
  /** Whether another place may be offered; the last word on it. */
  readonly isLegal: (slot: Slot) => boolean;
  /** How many others are wanted, on a day each. */
  readonly others: number;
}

/** The places that were found. */
export interface MovesFound {
  /** What the first one costs; none when that is nothing, or the planner knows no such place. */
  readonly first?: Message;
  /** The best first. */
  readonly others: readonly Move[];
}

/**
 * The best places for a session in its week, or in the running one when its own is over, and in the week after when
 * there is none: at most one a day.
 */
export function bestMoves(
  { journal, options }: ToMend,
  session: Session,
  { first, isLegal, others }: MovesAsked,
): MovesFound {
  const context = checkContext(journal, options);
  const facts = context
    .weeks(isoWeekOfDay(session.day))
    .standing.find(
      (one) =>
        one.session.note === session.note &&
        one.session.entry.range.start === session.entry.range.start &&
        one.session.day === session.day,
    );
  if (!facts) return { others: [] };
  const own = isoWeekOfDay(session.day);
  const current = isoWeekOf(options.today);
  const begin = own < current ? current : own;
  let firstWords: Message | undefined;
  for (const week of [begin, addWeeks(begin, 1)]) {
    if (daysToPlan(context, week).length === 0) continue;
    const habits = habitsBefore(context, week);
    const asked = movingSession(context, week, facts);
    const built = buildProblem({ context, habits, weeks: [week], asked: [asked], without: [facts] });
    const [need] = built.problem.needs;
    const places = built.asked[0]?.places;
    if (!need || !places) break;
    const here = need.candidates.findIndex(({ standsHere }) => standsHere);
    const candidate = need.candidates[here];
    const now = candidate
      ? [{ need: need.id, candidate: here, start: candidate.start, end: candidate.end, day: candidate.day }]
      : [];
    const found: Move[] = [];
    const days = new Set<number>();
    const best = bestPlaces(built.problem, now, need.id, candidate?.start, need.candidates.length);
    const wordsOf = (place: Place, difference: Objective): Message | undefined => {
      const moved = sessionIn(session, place);
      const after = checkContext(
        journalWithSessions(journal, { without: [session], added: [moved] }),
        options,
      );
      const reasons = placeWords(
        { asked, place, session: moved },
        { context: after, habits, rules: built.problem.rules },
      );
      return inOneLine([...costWords(difference), ...reasons]);
    };
    let tried = 0;
    for (const { session: placed, difference } of best) {
      const place = places[placed.candidate];
      if (!place) continue;
      const slot: Slot = { day: place.day, start: place.start };
      if (place.day === first.day && place.start === first.start)
        firstWords ??= inOneLine(costWords(difference));
      if (found.length >= others || tried >= mostTried || days.has(place.day)) continue;
      tried += 1;
      if (!isLegal(slot)) continue;
      days.add(place.day);
      found.push({ slot, words: wordsOf(place, difference) ?? message('breaks no rule') });
    }
    if (found.length > 0) return { ...present({ first: firstWords }), others: found };
  }
  return { ...present({ first: firstWords }), others: [] };
}
