import { isoWeekday } from '../../notation/time/iso-date';
import { formatTime } from '../../notation/time/wall-clock';
import type { Message } from '../../training/finding';
import { type Gap, gapBetween } from '../../training/gap';
import type { SessionFacts } from '../../training/session-facts';
import { standingBetween } from '../../training/training-week';
import type { CheckContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { longestReach } from '../findings-added';
import { belongsTo, type Rule } from '../solver/problem';
import { type Habits, habitWeeks } from '../week-problem/kept-habits';
import { hoursOn, ownHours } from '../week-problem/own-hours';
import { labelsOf } from '../week-problem/session-labels';
import { joined, separated } from './joined-messages';
import type { SolvedSession } from './solve-weeks';

/** What reasons are given from. */
export interface ReasonInput {
  /** The journal with everything placed. */
  readonly context: CheckContext;
  readonly habits: Habits;
  readonly rules: readonly Rule[];
}

/** The nearest earlier session from which a rule keeps this one apart, and how far away it is. */
function nearestKeptApart(
  facts: SessionFacts,
  { context, rules }: ReasonInput,
): { readonly before: SessionFacts; readonly gap: Gap } | undefined {
  const labels = labelsOf(facts, context.plan, 0);
  const asking = rules.flatMap((rule) =>
    (rule.type === 'gap' || rule.type === 'day-gap') && belongsTo(labels, rule.later) ? [rule] : [],
  );
  if (asking.length === 0) return undefined;
  const { day } = facts.session;
  const start = facts.session.entry.span?.value.start ?? Infinity;
  const earlier = standingBetween(context.weeks, day - longestReach(context), day).filter(
    (one) =>
      one.session !== facts.session &&
      (one.session.day < day || (one.session.entry.span?.value.start ?? Infinity) < start),
  );
  const before = earlier
    .filter((one) => {
      const own = labelsOf(one, context.plan, 0);
      return asking.some((rule) => belongsTo(own, rule.earlier));
    })
    .at(-1);
  if (!before) return undefined;
  const inDays = asking.every(({ type }) => type === 'day-gap');
  const unit = inDays ? 'd' : 'h';
  return { before, gap: gapBetween(context.timed(before), context.timed(facts), { minutes: 0, unit }) };
}

function gapWords({ before, gap }: { readonly before: SessionFacts; readonly gap: Gap }): Message {
  const name = weekdayName(before.session.day);
  if (gap.countedIn === 'minutes') return message("{0} h after {1}'s", Math.floor(gap.amount / 60), name);
  return gap.amount === 1
    ? message("1 day after {0}'s", name)
    : message("{0} days after {1}'s", gap.amount, name);
}

function habitWords({ asked, place }: SolvedSession, habits: Habits): Message | undefined {
  const { what, facts } = asked;
  const need = what.is === 'new' ? what.demand.need : facts.countsFor[0];
  const kept = habits
    .of(facts.session.kind, need)
    .find((habit) => habit.weekday === isoWeekday(place.day) && habit.start === place.start);
  if (!kept) return undefined;
  return message('as kept in {0} of the last {1} weeks', kept.weeks, habitWeeks);
}

function hoursWords({ asked, place }: SolvedSession, context: CheckContext): Message {
  const { plan } = context;
  const { start, day } = place;
  if (start === undefined || plan.free.length === 0) return message('breaks no rule');
  const span = hoursOn(plan, ownHours(plan.free, asked.facts.session), day).find(
    (one) => one.start <= start && start < one.end,
  );
  if (!span) return message('breaks no rule');
  return message('free from {0} to {1}', formatTime(Math.max(0, span.start)), formatTime(span.end));
}

/** `coach`, `as kept in 3 of the last 4 weeks`, `71 h after Monday's`; none when there is nothing to say. */
export function placeWords(solved: SolvedSession, input: ReasonInput): readonly Message[] {
  const { asked, session } = solved;
  const facts = input.context
    .weeks(asked.week)
    .standing.find((one) => one.session === session || one.session.note === session.note);
  const company = session.entry.with.map(({ value }) => value).join(', ');
  const habit = habitWords(solved, input.habits);
  const apart = facts && nearestKeptApart(facts, input);
  return [
    ...(company === '' ? [] : [message('{0}', company)]),
    ...(habit ? [habit] : []),
    ...(apart ? [gapWords(apart)] : []),
  ];
}

/** `moved from Monday; coach; 71 h after Monday's`, or what the hours say when there is nothing else to say. */
export function whyPlaced(solved: SolvedSession, input: ReasonInput): Message {
  const { what } = solved.asked;
  const from = what.is === 'moving' ? what.session : undefined;
  const parts: readonly Message[] = [
    ...(from ? [message('moved from {0}', weekdayName(from.day))] : []),
    ...placeWords(solved, input),
  ];
  return joined(separated(parts.length > 0 ? parts : [hoursWords(solved, input.context)], '; '));
}

/** `Thursday 18:30: coach; 71 h after Monday's`. */
export function placedReason({ place }: SolvedSession, why: Message): Message {
  const name = weekdayName(place.day);
  return joined([
    place.start === undefined ? message('{0}: ', name) : message('{0} {1}: ', name, formatTime(place.start)),
    why,
  ]);
}
