import type { PlannedSession } from '../adherence/planned-sessions';
import type { Message } from '../finding';
import { message } from '../wording';
import { kindCounts, type MonthWeek } from './month-facts';

/** Clauses of one sentence about a week; what shows them puts a semicolon between them. */
export type Clauses = readonly Message[];

/** More sessions of one kind in a week are spoken of without saying which of them it was. */
const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'] as const;

/** What stands behind "the third": a template for every built-in reason, so that each can be translated whole. */
function endOf({ outcome, reason }: PlannedSession): { readonly words: string; readonly value?: string } {
  if (outcome === 'unmarked') return { words: 'is not marked yet' };
  switch (reason) {
    case 'travel':
      return { words: 'fell to travel' };
    case 'work':
      return { words: 'fell to work' };
    case 'ill':
      return { words: 'fell to illness' };
    case 'injured':
      return { words: 'fell to an injury' };
    case 'sore':
      return { words: 'was left out while sore' };
    case 'tired':
      return { words: 'was left out while tired' };
    case 'other':
    case undefined:
      return { words: 'was left out' };
    default:
      return { words: 'was left out ({0})', value: reason };
  }
}

function lostClause(lost: PlannedSession, among: readonly PlannedSession[]): Message {
  const { words, value } = endOf(lost);
  const ordinal = among.length === 1 ? 'it' : `the ${ordinals[among.indexOf(lost)] ?? 'last'}`;
  return value === undefined ? message(`${ordinal} ${words}`) : message(`${ordinal} ${words}`, value);
}

/** Beyond so many, the ones that were not kept are counted and not told one by one. */
const mostTold = 2;

function kindClauses(kind: string, own: readonly PlannedSession[], withReasons: boolean): Clauses {
  const lost = own.filter(({ outcome }) => outcome !== 'done');
  const count =
    own.length === 1
      ? message('{0} of {1} {2} session', own.length - lost.length, own.length, kind)
      : message('{0} of {1} {2} sessions', own.length - lost.length, own.length, kind);
  const isTold = withReasons && lost.length <= mostTold && own.length <= ordinals.length;
  return isTold ? [count, ...lost.map((one) => lostClause(one, own))] : [count];
}

/**
 * One sentence of facts about a week, in clauses: `2 of 3 flexibility sessions`, `the third fell to travel`. Kinds of
 * which every session was kept are not told one by one. Nothing in it blames or praises.
 * @param withReasons whether it says why sessions were not kept; reasons can tell of a body
 */
export function weekClauses(week: MonthWeek, withReasons: boolean): Clauses {
  const { past, ahead, done } = week;
  const still = ahead === 0 ? [] : [message('{0} to come', ahead)];
  if (past.length === 0) {
    return still.length > 0 ? still : [message('no session planned')];
  }
  if (done === past.length) {
    return [done === 1 ? message('the one session kept') : message('all {0} sessions kept', done), ...still];
  }
  const partly = kindCounts(week).filter((count) => count.done < count.planned);
  const kept = kindCounts(week).length - partly.length;
  return [
    ...partly.flatMap(({ kind }) =>
      kindClauses(
        kind,
        past.filter(({ facts }) => facts.session.kind === kind),
        withReasons,
      ),
    ),
    ...(kept === 0 ? [] : [message('all others kept')]),
    ...still,
  ];
}
