import type { Message } from '../../training/finding';
import { entryPlace } from '../../training/session-place';
import type { CheckContext } from '../../training/week-under-check';
import { lengthInWords, message } from '../../training/wording';
import type { PlanningProblem, Rule } from '../solver/problem';
import { withFewerSessions, withMinutes, withoutParts } from '../solver/problem-changes';
import { type PossibleChange, remedySteps } from '../solver/remedies';
import type { Steps } from '../solver/slices';
import type { WeekProblem } from '../week-problem/build-problem';
import type { ProblemSource } from '../week-problem/problem-source';
import { explainNodes, type FoundConflict, namedLine } from './explain-weeks';
import { joined, listed } from './joined-messages';
import { type LimitField, limitChange, writtenLength } from './limit-change';
import { partInWords, partPlaces, sessionsInWords, weekdayWord } from './part-words';
import type { PlanRemedy } from './weeks-plan';

/** How many remedies are looked for. */
const mostRemedies = 3;

/**
 * What a change costs the athlete, before how much of it is asked: an hour more, then another booking, then a session
 * given up, then a limit stretched, then less time to recover, then less rest. Only their order counts; an assumption.
 */
const costs = {
  hours: 10,
  company: 15,
  standing: 20,
  busy: 25,
  asked: 30,
  limit: 50,
  gap: 70,
  rest: 90,
} as const;

/** Gaps are shortened by half days, caps stretched by half hours. */
const gapStep = 12 * 60;
const capStep = 30;
const mostSteps = 6;

interface Change extends PossibleChange {
  readonly title: Message;
  readonly source: ProblemSource;
  /** What the line of the limit would say; `undefined` for what no single line says. */
  readonly field?: LimitField;
}

function ruleOf(problem: PlanningProblem, id: string): Rule | undefined {
  return problem.rules.find((rule) => rule.id === id);
}

function withDays(problem: PlanningProblem, id: string, days: number): PlanningProblem {
  return {
    ...problem,
    rules: problem.rules.map((rule) =>
      rule.id === id && (rule.type === 'day-gap' || rule.type === 'rest') ? { ...rule, days } : rule,
    ),
  };
}

function withMax(problem: PlanningProblem, id: string, max: number): PlanningProblem {
  return {
    ...problem,
    rules: problem.rules.map((rule) => (rule.id === id && rule.type === 'count' ? { ...rule, max } : rule)),
  };
}

/** A gap of days in the unit in which its line says it. */
function writtenDays(days: number, source: ProblemSource): string {
  const isInDays =
    (source.about === 'rule' && source.rule.gap?.unit === 'd') ||
    (source.about === 'need' && source.need.gap?.unit === 'd');
  return isInDays ? `${days}d` : `${days * 24}h`;
}

/** One session a week more, where the line counts sessions. */
function oneMore(max: number, source: ProblemSource): { readonly field?: LimitField } {
  const written =
    source.about === 'rule' ? source.rule.max : source.about === 'need' ? source.need.max : undefined;
  return written?.count === undefined ? {} : { field: { name: 'max', text: `${max + 1}/week` } };
}

/** What could be changed about a limit or a gap, the smallest change first. */
function ruleChanges(rule: Rule, source: ProblemSource, words: Message): readonly Change[] {
  const steps = Array.from({ length: mostSteps }, (_, index) => index + 1);
  const base = { id: rule.id, source };
  switch (rule.type) {
    case 'gap':
      return steps
        .map((step) => ({ step, minutes: rule.minutes - step * gapStep }))
        .filter(({ minutes }) => minutes > 0)
        .map(({ step, minutes }) => ({
          ...base,
          cost: costs.gap + step,
          title: joined([message('Make it {0} in place of ', lengthInWords({ minutes, unit: 'h' })), words]),
          field: { name: 'gap', text: writtenLength(minutes) },
          apply: (problem) => withMinutes(problem, rule.id, minutes),
        }));
    case 'day-gap':
      return steps
        .filter((step) => step < rule.days)
        .map((step) => ({
          ...base,
          cost: costs.gap + 2 * step,
          title: joined([
            message(
              'Make it {0} in place of ',
              lengthInWords({ minutes: (rule.days - step) * 1440, unit: 'd' }),
            ),
            words,
          ]),
          field: { name: 'gap', text: writtenDays(rule.days - step, source) },
          apply: (problem) => withDays(problem, rule.id, rule.days - step),
        }));
    case 'cap':
      return steps.map((step) => ({
        ...base,
        cost: costs.limit + step,
        title: joined([message('Allow {0} min more than ', step * capStep), words]),
        field: { name: 'cap', text: writtenLength(rule.minutes + step * capStep) },
        apply: (problem) => withMinutes(problem, rule.id, rule.minutes + step * capStep),
      }));
    case 'count': {
      const { max } = rule;
      if (max === undefined) return [];
      return [
        {
          ...base,
          cost: costs.limit,
          title: joined([message('Allow one more than '), words]),
          ...oneMore(max, source),
          apply: (problem) => withMax(problem, rule.id, max + 1),
        },
      ];
    }
    case 'rest':
      return [
        {
          ...base,
          cost: costs.rest,
          title: joined([message('Do with one day less than '), words]),
          field: { name: 'min', text: `${Math.max(0, rule.days - 1)}/week` },
          apply: (problem) => withDays(problem, rule.id, Math.max(0, rule.days - 1)),
        },
      ];
    default:
      return [];
  }
}

function partChanges(id: string, source: ProblemSource, context: CheckContext): readonly Change[] {
  const words = partInWords(source, context);
  const without = (cost: number, title: Message): readonly Change[] => [
    { id, source, cost, title, apply: (problem) => withoutParts(problem, id) },
  ];
  switch (source.about) {
    case 'asked':
      return [
        {
          id,
          source,
          // The farther the goal, the sooner it waits.
          cost: costs.asked - (source.asked.importance ?? 0) / 100,
          title: joined([
            source.asked.what.is === 'moving'
              ? message('Leave out this week: ')
              : message('Ask for one less this week: '),
            sessionsInWords(source.asked, 1),
          ]),
          apply: (problem) => withFewerSessions(problem, id),
        },
      ];
    case 'standing':
      // What is done cannot be undone.
      return source.facts.state === 'done'
        ? []
        : without(costs.standing, joined([message('Move or give up '), words]));
    case 'busy':
    case 'calendar':
    case 'event':
      return without(costs.busy, joined([message('Train in spite of '), words]));
    case 'hours':
      return without(costs.hours, message('Make time on {0}', weekdayWord(source.weekday)));
    case 'company':
      return without(costs.company, joined([message('Train outside of '), words]));
    default:
      // Nobody is told to train on in pain.
      return [];
  }
}

/**
 * The cheapest single changes that would let all sessions of a week fit, one for each part of the conflict at most.
 * Each is tried by solving again.
 */
export function* changesToFit(
  { problem, conflict }: FoundConflict,
  built: WeekProblem,
  context: CheckContext,
): Steps<readonly PlanRemedy[]> {
  const changes = conflict.parts.flatMap(({ id }): readonly Change[] => {
    const source = built.sources.get(id);
    if (!source) return [];
    const rule = ruleOf(problem, id);
    return rule && source.about !== 'pain'
      ? ruleChanges(rule, source, partInWords(source, context))
      : partChanges(id, source, context);
  });
  const found: Change[] = [];
  const days: Change[] = [];
  for (const change of changes.sort((one, other) => one.cost - other.cost)) {
    if (found.length + Math.min(1, days.length) >= mostRemedies) break;
    if (found.some(({ id }) => id === change.id)) continue;
    const [works] = yield* remedySteps(problem, [change], { limit: 1, nodeLimit: explainNodes });
    if (works) (change.source.about === 'hours' ? days : found).push(change);
  }
  return [...oneOfDays(days, context), ...found.map((change) => remedy(change, context))];
}

function remedy({ title, source, field }: Change, context: CheckContext): PlanRemedy {
  const [place] = partPlaces(source);
  return {
    title,
    ...(place ? { line: namedLine(context.journal, place) } : {}),
    ...(field ? { writes: limitChange(context.journal, source, field) } : {}),
  };
}

/** Time on any of some days: one remedy, as it is one thing to do. It is written beside the other hours. */
function oneOfDays(days: readonly Change[], { journal, plan }: CheckContext): readonly PlanRemedy[] {
  if (days.length === 0) return [];
  const last = plan.free.at(-1);
  const names = days.map(({ source }) =>
    message('{0}', source.about === 'hours' ? weekdayWord(source.weekday) : ''),
  );
  const title = joined([message('Make time on '), listed(names, ' or ')]);
  return [{ title, ...(last ? { line: namedLine(journal, entryPlace(last)) } : {}) }];
}
