import type { Session } from '../../journal/journal';
import type { Weekday } from '../../notation/entries';
import { type DayNumber, isoWeekday } from '../../notation/time/iso-date';
import type { WallMinutes } from '../../notation/time/wall-clock';
import { type ClockSpan, suits } from '../../training/free-hours';
import { isDayTaken } from '../../training/open-days';
import type { CheckContext } from '../../training/week-under-check';
import { startsIn, without } from '../open-hours';
import { deviationFrom, type Habit, type Habits } from './kept-habits';
import { hoursOn, ownHours } from './own-hours';
import type { ProblemSource } from './problem-source';
import { type TakenTime, takenTimes } from './taken-times';

/** Where in its hours a session is liked best. */
export type TimeOfDay = 'earlier' | 'later';

/** A day and time at which a session could stand, with what the place costs. */
export interface Place {
  readonly day: DayNumber;
  /** Undefined for a session without a time. */
  readonly start: WallMinutes | undefined;
  readonly deviation: number;
  readonly preference: number;
  /** What rules the place out; empty when it is free. */
  readonly blockedBy: readonly string[];
}

/** What a list of places is made for. */
export interface PlacesInput {
  readonly context: CheckContext;
  readonly habits: Habits;
  /** The session, its day and time aside. */
  readonly pattern: Session;
  readonly minutes: number;
  readonly hasTime: boolean;
  /** The sessions that it is like, as far as they were kept. */
  readonly kept: readonly Habit[];
  /** A time that is tried on every day. */
  readonly ownStart?: WallMinutes;
  readonly days: readonly DayNumber[];
  readonly timeOfDay: TimeOfDay;
  /** Minutes between the starts that are tried in open hours: a multiple of 15. */
  readonly step: number;
}

/** Places, and what the ids that rule some of them out stand for. */
export interface Places {
  readonly places: readonly Place[];
  readonly sources: ReadonlyMap<string, ProblemSource>;
}

/** Blocked places only show what could be given up, so an hour between them is near enough. */
const blockedStep = 60;

/** Hours that nobody has named are not worth a finer look than this: the usual times are tried as well. */
const assumedStep = 60;

/** A usual hour where nothing at all tells of one: after work. An assumption. */
const plainStart: WallMinutes = 18 * 60;

/** Quarters of an hour of a day. */
const quartersADay = 96;

/** Hours shorter than this are less liked, half an hour a step; what is longer gives time to arrive and to cool down. */
const roomyMinutes = 180;

/**
 * What a place costs at the last level: a short slot first, then the distance from the end of the hours that is liked,
 * then a later day of the week, so that of equal places there is one that is best. Whole, at least 0.
 */
function preferenceOf(
  span: ClockSpan | undefined,
  { start, weekday }: { readonly start: WallMinutes | undefined; readonly weekday: Weekday },
  minutes: number,
  timeOfDay: TimeOfDay,
): number {
  if (start === undefined || !span) return weekday - 1;
  const shortness = Math.ceil(Math.max(0, roomyMinutes - (span.end - span.start)) / 30);
  const distance = timeOfDay === 'earlier' ? start - span.start : span.end - minutes - start;
  const quarters = Math.min(quartersADay - 1, Math.max(0, Math.round(distance / 15)));
  return (shortness * quartersADay + quarters) * 7 + weekday - 1;
}

/** One day, as a session finds it. */
class DayPlaces {
  readonly #found = new Map<WallMinutes | undefined, Place>();
  readonly #weekday: Weekday;
  readonly #taken: readonly TakenTime[];

  constructor(
    private readonly input: PlacesInput,
    private readonly day: DayNumber,
    private readonly sources: Map<string, ProblemSource>,
  ) {
    this.#weekday = isoWeekday(day) as Weekday;
    this.#taken = takenTimes(input.context.plan, day, input.context.zone);
  }

  find(): readonly Place[] {
    if (this.input.hasTime) this.#findTimes();
    else this.#findDay();
    return [...this.#found.values()];
  }

  #add(start: WallMinutes | undefined, span: ClockSpan | undefined, blockedBy: readonly string[]): void {
    if (this.#found.has(start)) return;
    const { kept, habits, minutes, timeOfDay } = this.input;
    const weekday = this.#weekday;
    this.#found.set(start, {
      day: this.day,
      start,
      deviation: deviationFrom(kept, habits.usualStarts, weekday, start),
      preference: preferenceOf(span, { start, weekday }, minutes, timeOfDay),
      blockedBy,
    });
  }

  /** The ids of what takes a part of the time from `start` to `end`. */
  #takenBy(start: WallMinutes, end: WallMinutes): readonly string[] {
    const taking = this.#taken.filter((time) => time.start < end && start < time.end);
    for (const { id, source } of taking) this.sources.set(id, source);
    return [...new Set(taking.map(({ id }) => id))];
  }

  #closed(): string {
    const { plan } = this.input.context;
    const id = `hours ${this.#weekday}`;
    this.sources.set(id, { about: 'hours', weekday: this.#weekday, lines: plan.free });
    return id;
  }

  #findDay(): void {
    const { context, pattern } = this.input;
    const { plan, zone } = context;
    const whole =
      isDayTaken(plan, this.day, zone) || this.#taken.some(({ source }) => source.about === 'event');
    const hours = hoursOn(plan, ownHours(plan.free, pattern), this.day);
    if (plan.free.length > 0 && hours.length === 0) this.#add(undefined, undefined, [this.#closed()]);
    else if (whole) this.#add(undefined, undefined, this.#takenBy(0, 1440));
    else if (plan.free.length > 0 && without(hours, this.#taken).length === 0)
      this.#add(undefined, undefined, this.#takenBy(0, 1440));
    else this.#add(undefined, undefined, []);
  }

  #findTimes(): void {
    const { context, pattern, minutes, kept } = this.input;
    const { plan } = context;
    const hours = hoursOn(plan, ownHours(plan.free, pattern), this.day);
    const open = without(hours, this.#taken);
    const within = (spans: readonly ClockSpan[], start: WallMinutes) =>
      spans.find((span) => span.start <= start && start + minutes <= span.end);
    const isNamed = plan.free.length > 0;
    // Where no hours are named, the athlete's own sessions show at which hours they train.
    const usual = isNamed
      ? kept.filter(({ weekday }) => weekday === this.#weekday).map(({ start }) => start)
      : [...kept.map(({ start }) => start), ...this.input.habits.usualStarts];
    for (const start of [...usual, this.input.ownStart]) {
      if (start === undefined) continue;
      const span = within(hours, start);
      if ((span || !isNamed) && this.#takenBy(start, start + minutes).length === 0)
        this.#add(start, span, []);
    }
    for (const start of startsIn(open, minutes))
      if (isNamed ? this.#isTried(start, within(open, start)) : start % assumedStep === 0)
        this.#add(start, within(hours, start), []);
    for (const start of startsIn(hours, minutes).filter((one) => one % blockedStep === 0)) {
      const blockedBy = this.#takenBy(start, start + minutes);
      if (blockedBy.length > 0) this.#add(start, within(hours, start), blockedBy);
    }
    if (plan.free.length === 0) return;
    const keptForOthers = this.#findKeptForOthers(hours);
    if (keptForOthers || startsIn(hours, minutes).length > 0) return;
    const start = kept.find((habit) => habit.start !== undefined)?.start ?? plainStart;
    this.#add(start, undefined, [this.#closed(), ...this.#takenBy(start, start + minutes)]);
  }

  /** Whether a start is tried in open hours: every step from their beginning, and the last that fits. */
  #isTried(start: WallMinutes, open: ClockSpan | undefined): boolean {
    const { step, minutes } = this.input;
    return !open || (start - open.start) % step === 0 || start + minutes + 15 > open.end;
  }

  /** Hours that would do if they were not kept for a partner or a place; whether there are any. */
  #findKeptForOthers(own: readonly ClockSpan[]): boolean {
    const { context, pattern, minutes } = this.input;
    const { plan } = context;
    const lines = ownHours(plan.free, pattern);
    const others = plan.free.filter((line) => suits(pattern, line) && !lines.includes(line));
    if (others.length === 0) return false;
    const company = pattern.entry.with.map(({ value }) => value);
    const keepers = company.filter((name) => lines.every((line) => line.with.includes(name)));
    const name = keepers.length > 0 ? keepers.join(', ') : (pattern.entry.where?.value ?? '');
    const id = `company ${name}`;
    this.sources.set(id, { about: 'company', name, lines });
    const starts = startsIn(without(hoursOn(plan, others, this.day), own), minutes);
    for (const start of starts) {
      if (start % (blockedStep / 2) !== 0) continue;
      this.#add(start, undefined, [id, ...this.#takenBy(start, start + minutes)]);
    }
    return starts.length > 0;
  }
}

/**
 * Where a session could stand on some days: each quarter of an hour in the hours that are its own and not taken, and
 * the times that were kept; and, ruled out, some where only something that could be given up is in the way. Other
 * sessions are not looked at.
 */
export function placesFor(input: PlacesInput): Places {
  const sources = new Map<string, ProblemSource>();
  const places = input.days.flatMap((day) => new DayPlaces(input, day, sources).find());
  return { places, sources };
}
