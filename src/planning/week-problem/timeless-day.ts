import type { DayNumber } from '../../notation/time/iso-date';
import type { SessionFacts } from '../../training/session-facts';
import type { AskedSessions } from './asked-sessions';
import type { ClockAxis } from './clock-axis';

/** Where sessions without a time stand on the solver's axis, which knows only times. */
export interface TimelessDay {
  /** The axis to use when no session has a time; days on it are as long as all sessions together. */
  readonly axis: ClockAxis | undefined;
  standing(facts: SessionFacts, axis: ClockAxis): { readonly start: number; readonly end: number };
  asked(
    asked: AskedSessions,
    day: DayNumber,
    copy: number,
    axis: ClockAxis,
  ): { readonly start: number; readonly end: number };
  /** The slots of a day that like sessions can take; one for sessions with a time. */
  copies(asked: AskedSessions, hasTime: boolean): readonly number[];
}

const minutesADay = 1440;

/** Where sessions without a time stand among those with one: at night, a minute each. An assumption. */
const nightStart = 4 * 60;

interface Slot {
  readonly start: number;
  readonly minutes: number;
}

/** Days on an axis without clock: each as long as `length`. */
function wideAxis(firstDay: DayNumber, length: number): ClockAxis {
  return {
    at: (day, minutes) => (day - firstDay) * length + minutes,
    ofInstant: () => {
      throw new RangeError('No session has a time.');
    },
    dayIndex: (day) => day - firstDay,
  };
}

/**
 * Gives each session without a time a slot of its own in the day, so that no two of them exclude each other. When no
 * session has a time, a slot is as long as its session, and caps are kept; otherwise it is a minute at night.
 * @param firstDay The first day of the horizon.
 * @param standing Sessions that stand.
 */
export function timelessDay(
  firstDay: DayNumber,
  standing: readonly SessionFacts[],
  asked: readonly { readonly asked: AskedSessions; readonly hasTime: boolean }[],
): TimelessDay {
  const standsTimed = standing.some(({ session }) => session.entry.span !== undefined);
  const isWide = !standsTimed && asked.every(({ hasTime }) => !hasTime) && asked.length > 0;
  const slots = new Map<object, Slot[]>();
  let next = isWide ? 0 : nightStart;
  const take = (of: object, minutes: number) => {
    const length = isWide ? Math.max(1, Math.ceil(minutes)) : 1;
    slots.set(of, [...(slots.get(of) ?? []), { start: next, minutes: length }]);
    next += length;
  };
  for (const facts of standing) {
    if (facts.session.entry.span === undefined) take(facts, facts.minutes ?? 0);
  }
  for (const one of asked) {
    if (one.hasTime) continue;
    for (let copy = 0; copy < one.asked.count; copy += 1) take(one.asked, one.asked.minutes);
  }
  const placed = (of: object, day: DayNumber, copy: number, axis: ClockAxis) => {
    const slot = slots.get(of)?.[copy] ?? { start: nightStart, minutes: 1 };
    const start = axis.at(day, slot.start);
    return { start, end: start + slot.minutes };
  };
  return {
    axis: isWide ? wideAxis(firstDay, Math.max(minutesADay, next)) : undefined,
    standing: (facts, axis) => placed(facts, facts.session.day, 0, axis),
    asked: placed,
    copies: (one, hasTime) => (hasTime ? [0] : (slots.get(one) ?? []).map((_, copy) => copy)),
  };
}
