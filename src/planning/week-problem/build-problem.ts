import type { Weekday } from '../../notation/entries';
import { present } from '../../notation/present';
import { type DayNumber, isoWeekday } from '../../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import type { SessionFacts } from '../../training/session-facts';
import { standingBetween } from '../../training/training-week';
import type { CheckContext } from '../../training/week-under-check';
import { longestReach } from '../findings-added';
import { type Level, PLANNING, REARRANGING } from '../solver/order';
import type { Candidate, Label, Need, PlanningProblem, Rule, StandingSession } from '../solver/problem';
import { excludeEachOther } from '../solver/session-rules';
import { finish, type Steps } from '../solver/slices';
import type { AskedSessions } from './asked-sessions';
import { type ClockAxis, clockAxis } from './clock-axis';
import { type Habit, type Habits, habitWeeks } from './kept-habits';
import { type Place, placesFor, type TimeOfDay } from './places';
import { type ComfortableGap, type LabelledSession, problemRules } from './problem-rules';
import type { ProblemSource } from './problem-source';
import { labelsOf, timed, timeless } from './session-labels';
import { type TimelessDay, timelessDay } from './timeless-day';

/** Minutes between the starts that are tried in the open hours of a few weeks. */
const weekStep = 15;

/**
 * Minutes between them in a longer block, of which nobody knows the quarters of an hour yet: with them, its best plan
 * would take some seconds. Times that were kept are tried in any case.
 */
const blockStep = 60;

/** The most weeks that are planned to the quarter of an hour. */
const mostFineWeeks = 4;

/** Places that are put on the solver's axis in one step. */
const placesPerStep = 16;

/** What a problem is built of. */
export interface ProblemInput {
  readonly context: CheckContext;
  readonly habits: Habits;
  /** Weeks that follow each other. */
  readonly weeks: readonly IsoWeek[];
  readonly asked: readonly AskedSessions[];
  /** Sessions that stand but are asked for anew. */
  readonly without?: readonly SessionFacts[];
  readonly comfortable?: readonly ComfortableGap[];
  readonly timeOfDay?: TimeOfDay;
  /** Keys of places that may not be taken; see {@link placeKey}. */
  readonly refused?: ReadonlySet<string>;
}

/** Sessions to place, with their places in the order of the solver's candidates. */
export interface AskedWithPlaces {
  readonly id: string;
  readonly asked: AskedSessions;
  readonly places: readonly Place[];
}

/** A question to the solver, and what its parts stand for in the journal. */
export interface WeekProblem {
  readonly problem: PlanningProblem;
  readonly asked: readonly AskedWithPlaces[];
  readonly sources: ReadonlyMap<string, ProblemSource>;
  readonly axis: ClockAxis;
  /** Whether a limit was put more strictly than it is written, so that the best plan is not proven to be one. */
  readonly isApproximate: boolean;
}

/** Names a place of one sort of sessions, the same in every problem of a journal. */
export function placeKey(asked: AskedSessions, day: DayNumber, start: WallMinutes | undefined): string {
  const sort = asked.what.is === 'new' ? asked.what.demand.group : asked.facts.session.note;
  return `${sort} ${day} ${start}`;
}

/** Days of a horizon on which something may still be placed. */
export function daysToPlan(context: CheckContext, week: IsoWeek): readonly DayNumber[] {
  const monday = mondayOf(week);
  return [0, 1, 2, 3, 4, 5, 6].map((offset) => monday + offset).filter((day) => day >= context.todayNumber);
}

/** A session that stands, on the solver's axis. */
interface Standing {
  readonly facts: SessionFacts;
  readonly id: string;
  readonly labels: readonly Label[];
  readonly start: number;
  readonly end: number;
  readonly day: number;
  /** When it starts, for a session of which nothing says how long it lasts. */
  readonly moment?: number;
}

function standingOn(
  facts: SessionFacts,
  index: number,
  { context, axis, slots }: { context: CheckContext; axis: ClockAxis; slots: TimelessDay },
): Standing {
  const day = axis.dayIndex(facts.session.day);
  const times = context.timed(facts).times;
  const span = times
    ? { start: axis.ofInstant(times.start), end: axis.ofInstant(times.end) }
    : slots.standing(facts, axis);
  // The solver knows no moments: a session of which nothing says how long it lasts is given the minute before its
  // start, so that gaps are measured from the start itself.
  const isMoment = span.end <= span.start;
  const opensDay = facts.session.entry.span?.value.start === 0;
  return {
    facts,
    id: `standing ${index}`,
    labels: labelsOf(facts, context.plan, Math.floor(day / 7)),
    start: isMoment && !opensDay ? span.start - 1 : span.start,
    end: isMoment && opensDay ? span.start + 1 : span.end,
    day,
    ...(isMoment ? { moment: span.start } : {}),
  };
}

function labelsAsked({ facts }: AskedSessions, week: number, hasTime: boolean, context: CheckContext) {
  return labelsOf(facts, context.plan, week)
    .filter((label) => label !== timed && label !== timeless)
    .concat(hasTime ? timed : timeless);
}

/** Whether like sessions are given times: as they have, or as the journal does. */
function hasTimes({ what }: AskedSessions, { context, habits }: ProblemInput): boolean {
  if (what.is === 'moving') return what.session.entry.span !== undefined;
  return context.plan.free.length > 0 || habits.saysTimes;
}

/** What was kept of a sort; for a session that moves and is not like any, the time for which it was planned. */
function habitsOf({ what, facts }: AskedSessions, habits: Habits): readonly Habit[] {
  const { session } = facts;
  const kept = habits.of(session.kind, what.is === 'new' ? what.demand.need : facts.countsFor[0]);
  if (kept.length > 0 || what.is === 'new') return kept;
  const weekday = isoWeekday(session.day) as Weekday;
  return [{ weekday, start: session.entry.span?.value.start, weeks: habitWeeks }];
}

/** How long a session lasts on the clock. */
function clockMinutes({ what, minutes }: AskedSessions): number {
  const span = what.is === 'moving' ? what.session.entry.span?.value : undefined;
  return span?.end === undefined ? minutes : span.end - span.start;
}

function standsAt({ what }: AskedSessions, { day, start }: Place, context: CheckContext): boolean {
  if (what.is === 'new') return false;
  const { session } = what;
  return (
    session.day === day &&
    session.day >= context.todayNumber &&
    (start === undefined || session.entry.span?.value.start === start)
  );
}

/**
 * Turns a journal and what is asked of it into a question for the solver. Sessions that stand are taken as they are;
 * those before and after the weeks matter as far as a gap reaches.
 */
export function buildProblem(input: ProblemInput): WeekProblem {
  return finish(buildProblemSteps(input));
}

/** The steps of {@link buildProblem}: twelve weeks have thousands of places, between which others may work. */
export function* buildProblemSteps(input: ProblemInput): Steps<WeekProblem> {
  const { context, weeks } = input;
  const { zone } = context;
  const [firstWeek] = weeks;
  if (firstWeek === undefined) throw new RangeError('A problem has at least one week.');
  const monday = mondayOf(firstWeek);
  const sunday = monday + 7 * weeks.length - 1;
  const reach = longestReach(context);
  const around = standingBetween(context.weeks, monday - reach, sunday + reach).filter(
    (facts) => !input.without?.some((gone) => gone.session === facts.session),
  );
  const slots = timelessDay(
    monday,
    around,
    input.asked.map((asked) => ({ asked, hasTime: hasTimes(asked, input) })),
  );
  const axis = slots.axis ?? clockAxis(monday, zone);
  const all: Standing[] = [];
  for (const [index, facts] of around.entries()) {
    yield 0;
    all.push(standingOn(facts, index, { context, axis, slots }));
  }
  const standing = all.filter(({ day }) => day < 7 * weeks.length);
  const later = all.filter(({ day }) => day >= 7 * weeks.length);

  const sources = new Map<string, ProblemSource>();
  const asked: (AskedWithPlaces & { readonly week: number; readonly hasTime: boolean })[] = [];
  for (const [index, one] of input.asked.entries()) {
    yield 0;
    const week = weeks.indexOf(one.week);
    const hasTime = hasTimes(one, input);
    const { what, facts } = one;
    const found = placesFor({
      context,
      habits: input.habits,
      pattern: facts.session,
      minutes: clockMinutes(one),
      hasTime,
      kept: habitsOf(one, input.habits),
      ...(what.is === 'moving' ? present({ ownStart: what.session.entry.span?.value.start }) : {}),
      days: daysToPlan(context, one.week),
      timeOfDay: input.timeOfDay ?? 'earlier',
      step: weeks.length > mostFineWeeks ? blockStep : weekStep,
    });
    for (const [id, source] of found.sources) sources.set(id, source);
    const places = withOwnPlace(found.places, one, context).flatMap((place) =>
      slots.copies(one, hasTime).map(() => place),
    );
    asked.push({ id: `asked ${index}`, asked: one, week, hasTime, places });
  }
  yield 0;

  const labelled = asked.map((one): LabelledSession & { readonly count: number } => ({
    labels: labelsAsked(one.asked, one.week, one.hasTime, context),
    minutes: one.asked.minutes,
    week: one.week,
    count: one.asked.count,
  }));
  const made = problemRules({
    context,
    weeks: weeks.length,
    asked: labelled.flatMap((one) => Array.from({ length: one.count }, () => one)),
    standing: standing.map(({ labels, facts, day }) => ({
      labels,
      minutes: facts.minutes ?? 0,
      week: Math.floor(day / 7),
    })),
    comfortable: input.comfortable ?? [],
    end: axis.at(sunday + 2, 0),
  });
  for (const [id, source] of made.sources) sources.set(id, source);
  const moments = new Set(all.flatMap(({ moment }) => moment ?? []));

  const needs: Need[] = [];
  yield 0;
  for (const [index, one] of asked.entries()) {
    const labels = labelled[index]?.labels ?? [];
    const candidate = (place: Place, copy: number): Candidate => {
      const span = one.hasTime
        ? timesOf(one.asked, place, axis)
        : slots.asked(one.asked, place.day, copy, axis);
      const day = axis.dayIndex(place.day);
      const inTheWay = later.filter((other) => excludes(made.rules, { labels, ...span, day }, other));
      for (const { id, facts } of inTheWay) sources.set(id, { about: 'standing', facts });
      // What starts together with a session of unknown length is taken for the same time.
      const isRefused =
        (one.hasTime && moments.has(span.start)) ||
        input.refused?.has(placeKey(one.asked, place.day, place.start)) === true;
      return {
        ...span,
        day,
        deviation: place.deviation,
        preference: place.preference,
        ...(standsAt(one.asked, place, context) ? { standsHere: true } : {}),
        blockedBy: [...place.blockedBy, ...inTheWay.map(({ id }) => id), ...(isRefused ? ['refused'] : [])],
      };
    };
    const copies = slots.copies(one.asked, one.hasTime);
    sources.set(one.id, { about: 'asked', asked: one.asked });
    const candidates: Candidate[] = [];
    for (const [at, place] of one.places.entries()) {
      candidates.push(candidate(place, copies[at % copies.length] ?? 0));
      if (at % placesPerStep === 0) yield 0;
    }
    needs.push({
      id: one.id,
      week: one.week,
      count: one.asked.count,
      labels,
      ...(one.asked.importance === undefined ? {} : { importance: one.asked.importance }),
      candidates,
    });
  }
  for (const { id, facts } of standing) sources.set(id, { about: 'standing', facts });
  const order: readonly Level[] = input.asked.some(({ what }) => what.is === 'moving')
    ? REARRANGING
    : PLANNING;
  return {
    problem: {
      weeks: weeks.length,
      needs,
      standing: standing.map(
        ({ id, labels, start, end, day }): StandingSession => ({ id, labels, start, end, day }),
      ),
      rules: made.rules,
      order,
      standingMayBreakRules: true,
    },
    asked: asked.map(({ id, asked: one, places }) => ({ id, asked: one, places })),
    sources,
    axis,
    isApproximate: made.isApproximate,
  };
}

/** A session that may stay where it is has that place, whatever the hours say. */
function withOwnPlace(
  places: readonly Place[],
  asked: AskedSessions,
  context: CheckContext,
): readonly Place[] {
  if (asked.what.is === 'new') return places;
  const { session } = asked.what;
  if (session.day < context.todayNumber) return places;
  const start = session.entry.span?.value.start;
  const isOwn = (place: Place) => place.day === session.day && place.start === start;
  const taken = places.filter((place) => isOwn(place) && place.blockedBy.length > 0);
  const others = places.filter((place) => !isOwn(place));
  const own = { day: session.day, start, deviation: 0, preference: 0, blockedBy: [] };
  return [...others, taken[0] ?? own];
}

function timesOf({ what, minutes }: AskedSessions, { day, start = 0 }: Place, axis: ClockAxis) {
  const span = what.is === 'moving' ? what.session.entry.span?.value : undefined;
  const begin = axis.at(day, start);
  // A session with a length lasts that long; one with a span ends when the clock shows its end.
  const end =
    span?.end === undefined ? begin + Math.ceil(minutes) : axis.at(day, start + span.end - span.start);
  return { start: begin, end: Math.max(end, begin + 1) };
}

function excludes(rules: readonly Rule[], one: Omit<Standing, 'id' | 'facts'>, other: Standing): boolean {
  const asProblem: PlanningProblem = {
    weeks: 1,
    needs: [],
    standing: [],
    rules,
    order: [],
    standingMayBreakRules: true,
  };
  return excludeEachOther(asProblem, one, other);
}
