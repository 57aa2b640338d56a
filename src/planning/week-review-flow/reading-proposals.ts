import type { Journal } from '../../journal/journal';
import { isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import type { Message } from '../../training/finding';
import type { GoalFigures } from '../../training/progress/goal-figures';
import type { MetricFigures } from '../../training/progress/metric-figures';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import type { ReviewedWeeks, ReviewProposal } from './review-proposal';

/** Days between two readings at the most. No source. */
export const daysToNextReading = 14;

/** More than so many are not read, nor measured in a week. */
const mostReadings = 4;

interface Unmeasured {
  readonly goal: string;
  readonly metric: MetricFigures;
  /** Days since the latest reading; `undefined` when there is none. */
  readonly days: number | undefined;
}

function unmeasuredIn(
  { todayNumber }: CheckContext,
  { planned }: ReviewedWeeks,
  { id, metrics }: GoalFigures,
): readonly Unmeasured[] {
  const sunday = mondayOf(planned) + 6;
  return metrics.flatMap((metric): Unmeasured[] => {
    const latest = Math.max(...metric.series.flatMap(({ days }) => days.map(({ day }) => day)));
    if (!Number.isFinite(latest)) return [{ goal: id, metric, days: undefined }];
    return sunday - latest > daysToNextReading ? [{ goal: id, metric, days: todayNumber - latest }] : [];
  });
}

/** `Measure low-split gap, warm`: plain words, which are no reading and ask for one. */
function reminderOf({ goal, metric: { name, condition } }: Unmeasured): Message {
  if (condition === 'warm') return message('Measure {0} {1}, warm', goal, name);
  if (condition === 'cold') return message('Measure {0} {1}, cold', goal, name);
  return message('Measure {0} {1}', goal, name);
}

/** Whether a note of the week asks for it already. */
function standsAlready(journal: Journal, { planned }: ReviewedWeeks, words: string): boolean {
  const monday = mondayOf(planned);
  return Array.from({ length: 7 }, (_, index) => journal.notesOf(monday + index))
    .flat()
    .some(({ text }) => text.includes(words));
}

/**
 * Metrics of open goals that would be without a reading for more than two weeks if none came in the next, those without
 * any first, then the longest ago.
 * @param goals figures of the open goals
 * @param say makes the words that are written into the note
 */
export function readingProposals(
  context: CheckContext,
  weeks: ReviewedWeeks,
  goals: readonly GoalFigures[],
  say: (message: Message) => string,
): readonly ReviewProposal[] {
  const longAgo = ({ days }: Unmeasured): number => days ?? Number.POSITIVE_INFINITY;
  return goals
    .flatMap((goal) => unmeasuredIn(context, weeks, goal))
    .filter((one) => !standsAlready(context.journal, weeks, say(reminderOf(one))))
    .sort((one, other) => (longAgo(other) === longAgo(one) ? 0 : longAgo(other) - longAgo(one)))
    .slice(0, mostReadings)
    .map((one): ReviewProposal => {
      const { goal, metric, days } = one;
      return {
        id: `reading ${goal} ${metric.name}`,
        subject: 'reading',
        title: message('Note down to measure next week: {0} {1}', goal, metric.name),
        why:
          days === undefined
            ? message('No reading yet')
            : message('Last measured on {0}, {1} days ago', isoDate(context.todayNumber - days), days),
        cautions: [],
        effect: { does: 'remind', goal, line: reminderOf(one) },
      };
    });
}
