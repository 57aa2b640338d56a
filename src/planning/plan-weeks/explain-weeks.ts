import type { Journal } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import { isoDate } from '../../notation/time/iso-date';
import { type IsoWeek, isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import type { Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { lengthInWords, message } from '../../training/wording';
import { type Conflict, explainSteps } from '../solver/explain';
import type { PlanningProblem, Rule } from '../solver/problem';
import { belongsTo, weekOfDay } from '../solver/problem';
import type { Steps } from '../solver/slices';
import type { WeekProblem } from '../week-problem/build-problem';
import type { ProblemSource } from '../week-problem/problem-source';
import { joined, listed } from './joined-messages';
import { closedDaysInWords, partInWords, partPlaces, sessionsInWords } from './part-words';
import type { NamedLine, PlanConflict } from './weeks-plan';

/** Nodes that one question of an explanation may take: it only asks whether things fit, not how best. */
export const explainNodes = 200_000;

/** One week's part of a question about some of its needs, with only what that week can be asked to hold. */
function problemOfWeek(
  built: WeekProblem,
  week: number,
  isAsked: (need: string) => boolean,
): PlanningProblem {
  const { problem } = built;
  const standing = problem.standing.filter(({ day }) => weekOfDay(day) === week);
  const needs = problem.needs.filter((need) => need.week === week && isAsked(need.id));
  const rules = problem.rules.map((rule): Rule => {
    if (rule.type === 'rest') {
      const trained = new Set(standing.filter((one) => belongsTo(one.labels, rule.of)).map(({ day }) => day));
      // What is trained already cannot be given up, so it is no reason against anything else.
      return { ...rule, days: Math.min(rule.days, 7 - trained.size) };
    }
    if (rule.type === 'count' && rule.min !== undefined) {
      const asks = needs.some((need) => belongsTo(need.labels, rule.of));
      const { min: _min, ...others } = rule;
      return asks ? rule : others;
    }
    return rule;
  });
  const inWeek = (day: number) => day - 7 * week;
  const shift = <T extends { readonly day: number }>(one: T): T => ({ ...one, day: inWeek(one.day) });
  return {
    ...problem,
    weeks: 1,
    needs: needs.map((need) => ({ ...need, week: 0, candidates: need.candidates.map(shift) })),
    standing: problem.standing.filter(({ day }) => inWeek(day) < 7).map(shift),
    rules,
  };
}

/** The words of a place; several lines are cut to the first. */
export function namedLine(journal: Journal, place: NotePlace): NamedLine {
  const text = journal.file(place.note)?.text.slice(place.range.start, place.range.end) ?? '';
  return { ...place, text: text.split(/\r\n|\r|\n/)[0] ?? '' };
}

/** The length of a gap that a source asks for. */
function gapOf(source: ProblemSource): LengthOfTime | undefined {
  if (source.about === 'rule' && source.aspect === 'gap') return source.rule.gap;
  return source.about === 'need' && source.aspect === 'gap' ? source.need.gap : undefined;
}

/** A gap and the only sessions that it keeps apart, as one part: `2 flexibility sessions 72 h apart`. */
function sessionsApart(
  sources: readonly ProblemSource[],
): { readonly asked: ProblemSource; readonly gap: ProblemSource; readonly words: Message } | undefined {
  const [only, ...others] = sources.filter((one) => one.about === 'asked');
  const [gap, ...otherGaps] = sources.filter((one) => gapOf(one) !== undefined);
  const length = gap && gapOf(gap);
  if (only?.about !== 'asked' || !length || others.length > 0 || otherGaps.length > 0) return undefined;
  if (only.asked.count < 2) return undefined;
  const sessions = sessionsInWords(only.asked, only.asked.count);
  return { asked: only, gap, words: joined([sessions, message(' {0} apart', lengthInWords(length))]) };
}

/** What is asked first, then rules, bookings, hours of others, what is taken, and at last the days without hours. */
const ranks: Readonly<Record<ProblemSource['about'], number>> = {
  asked: 0,
  need: 1,
  rule: 2,
  pain: 3,
  standing: 4,
  company: 5,
  busy: 6,
  calendar: 6,
  event: 6,
  hours: 7,
  wish: 8,
};

/** More weekdays than these are not named one by one. */
const mostWeekdays = 2;

/** The parts of a conflict in words; weekdays without hours are one. */
function wordsOf(sources: readonly ProblemSource[], context: CheckContext): readonly Message[] {
  const apart = sessionsApart(sources);
  const closed = sources.filter((one) => one.about === 'hours');
  const parts = sources.flatMap((one) => {
    if (one === apart?.asked) return [apart.words];
    return one === apart?.gap || one.about === 'hours' ? [] : [partInWords(one, context)];
  });
  if (closed.length === 0) return parts;
  return [
    ...parts,
    closed.length > mostWeekdays ? message('no other free hours') : closedDaysInWords(closed),
  ];
}

function capitalised(sentence: Message): Message {
  return { ...sentence, template: sentence.template.replace(/^[a-z]/, (letter) => letter.toUpperCase()) };
}

/** The sources of a conflict, each once. */
function sourcesOf(conflict: Conflict, built: WeekProblem): readonly ProblemSource[] {
  const found: ProblemSource[] = [];
  for (const { id } of conflict.parts) {
    const source = built.sources.get(id);
    if (source && !found.some((one) => isSameSource(one, source))) found.push(source);
  }
  return found.sort((one, other) => ranks[one.about] - ranks[other.about]);
}

/** Several rules of the solver can stand for one line. */
function isSameSource(one: ProblemSource, other: ProblemSource): boolean {
  if (one === other) return true;
  if (one.about === 'rule' && other.about === 'rule')
    return one.rule === other.rule && one.aspect === other.aspect;
  if (one.about === 'need' && other.about === 'need')
    return one.need === other.need && one.aspect === other.aspect;
  return false;
}

/** Ids that no athlete can change: they are taken as given. */
function givenIds(problem: PlanningProblem, built: WeekProblem): ReadonlySet<string> {
  const ids = new Set(['refused']);
  for (const { id, type } of problem.rules) {
    if (type === 'air' || type === 'row' || built.sources.get(id)?.about === 'wish') ids.add(id);
  }
  return ids;
}

/** Said of the running week, of which a part is over. */
const cannotStand = message(' cannot stand in the rest of this week');
const doNotFit = message(' do not fit into the rest of this week');

/** A conflict of one week, with the question in which it was found. */
export interface FoundConflict {
  readonly problem: PlanningProblem;
  readonly conflict: Conflict;
  readonly described: PlanConflict;
}

/**
 * Why the sessions of a week do not all fit, or `undefined` when that cannot be told.
 * @param leftOut Ids of the needs that found no place.
 */
export function* conflictOf(
  built: WeekProblem,
  week: IsoWeek,
  weeks: readonly IsoWeek[],
  leftOut: ReadonlySet<string>,
  context: CheckContext,
): Steps<FoundConflict | undefined> {
  const index = weeks.indexOf(week);
  function* explain(problem: PlanningProblem) {
    const conflict = yield* explainSteps(problem, {
      given: givenIds(problem, built),
      nodeLimit: explainNodes,
    });
    return conflict && { problem, conflict };
  }
  const whole = problemOfWeek(built, index, () => true);
  // Often what is left out does not fit on its own, which is told sooner.
  const alone = yield* explain(problemOfWeek(built, index, (need) => leftOut.has(need)));
  const found = alone ?? (yield* explain(whole));
  if (!found) return undefined;
  const { conflict } = found;
  if (conflict.parts.length === 0) return undefined;
  const sources = sourcesOf(conflict, built);
  const parts = wordsOf(sources, context);
  const isRunning = week === isoWeekOf(context.today);
  const monday = isoDate(mondayOf(week));
  const sentence =
    parts.length === 1
      ? joined([...parts, isRunning ? cannotStand : message(' cannot stand in the week of {0}', monday)])
      : joined([listed(parts), isRunning ? doNotFit : message(' do not fit into one week')]);
  return {
    problem: whole,
    conflict,
    described: {
      week,
      sentence: capitalised(sentence),
      lines: sources.flatMap(partPlaces).map((place) => namedLine(context.journal, place)),
      isSmallest: conflict.proven,
    },
  };
}
