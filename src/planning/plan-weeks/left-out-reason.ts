import type { Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { checkPlan } from '../solver/check-plan';
import type { Steps } from '../solver/slices';
import { daysToPlan } from '../week-problem/build-problem';
import { joined, listed } from './joined-messages';
import { partInWords } from './part-words';
import type { UnplacedSessions } from './solve-weeks';

/** How many obstacles are named. */
const mostNamed = 2;

/**
 * What stands in the way of sessions that found no place: what most often rules out the places that their hours
 * allow, with everything that is placed standing.
 */
export function* leftOutReason({ asked, question }: UnplacedSessions, context: CheckContext): Steps<Message> {
  const { built, plan } = question;
  const { kind } = asked.facts.session;
  if (daysToPlan(context, asked.week).length === 0) return message('The week is over');
  const found = built.asked.find((one) => one.asked.facts === asked.facts);
  const need = built.problem.needs.find(({ id }) => id === found?.id);
  const open = need?.candidates.flatMap((candidate, index) =>
    candidate.blockedBy?.length ? [] : [{ candidate, index }],
  );
  if (!need || !open || open.length === 0)
    return message('No open hours of the week hold {0} for {1} min', kind, asked.minutes);
  const counts = new Map<string, number>();
  for (const { candidate, index } of open) {
    yield 0;
    const { start, end, day } = candidate;
    const session = { need: need.id, candidate: index, start, end, day };
    const { violations } = checkPlan(built.problem, [...plan.placed, session]);
    for (const rule of new Set(violations.map(({ rule: id }) => id)))
      counts.set(rule, (counts.get(rule) ?? 0) + 1);
  }
  const inOrder = [...counts].sort(([, one], [, other]) => other - one);
  const written = inOrder.filter(([id]) => built.sources.has(id));
  // One rule that forbids every place says it all.
  const total = written.filter(([, count]) => count === open.length);
  const telling = [total, written, inOrder].find((some) => some.length > 0) ?? [];
  const obstacles = telling.map(([id]) => {
    const source = built.sources.get(id);
    return source ? partInWords(source, context) : message('another session at the time');
  });
  const named = obstacles.filter(
    (one, index) => obstacles.findIndex((other) => isSame(one, other)) === index,
  );
  if (named.length === 0) return message('{0} has no place beside the other sessions', kind);
  return joined([message('No place is left for {0}: ', kind), listed(named.slice(0, mostNamed))]);
}

function isSame(one: Message, other: Message): boolean {
  return one.template === other.template && one.values.join() === other.values.join();
}
