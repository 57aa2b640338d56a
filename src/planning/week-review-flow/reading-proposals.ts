import type { Goal, Journal, Measurement } from '../../journal/journal';
import { isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import type { Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import type { ReviewedWeeks, ReviewProposal } from './review-proposal';

/** Days between two readings at the most. No source. */
export const daysToNextReading = 14;

/** More than so many are not read, nor measured in a week. */
const mostReadings = 4;

interface Unmeasured {
  readonly goal: string;
  readonly metric: string;
  /** The latest reading, when there is one. */
  readonly latest?: Measurement;
}

function unmeasuredIn(
  { journal, todayNumber }: CheckContext,
  { planned }: ReviewedWeeks,
  { id, metrics }: Goal,
): readonly Unmeasured[] {
  const sunday = mondayOf(planned) + 6;
  return metrics.flatMap(({ name }): Unmeasured[] => {
    const latest = journal
      .measurements(id, name)
      .filter(({ day }) => day <= todayNumber)
      .at(-1);
    if (!latest) return [{ goal: id, metric: name }];
    return sunday - latest.day > daysToNextReading ? [{ goal: id, metric: name, latest }] : [];
  });
}

/** `Measure low-split gap, warm`: plain words, which are no reading and ask for one like the last. */
function reminderOf({ goal, metric, latest }: Unmeasured): Message {
  switch (latest?.condition) {
    case 'warm':
      return message('Measure {0} {1}, warm', goal, metric);
    case 'cold':
      return message('Measure {0} {1}, cold', goal, metric);
    default:
      return message('Measure {0} {1}', goal, metric);
  }
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
 * @param say makes the words that are written into the note
 */
export function readingProposals(
  context: CheckContext,
  weeks: ReviewedWeeks,
  say: (message: Message) => string,
): readonly ReviewProposal[] {
  const dayOf = ({ latest }: Unmeasured): number => latest?.day ?? 0;
  return [...context.plan.goals.values()]
    .filter(({ closed }) => !closed)
    .flatMap((goal) => unmeasuredIn(context, weeks, goal))
    .filter((one) => !standsAlready(context.journal, weeks, say(reminderOf(one))))
    .sort((one, other) => dayOf(one) - dayOf(other))
    .slice(0, mostReadings)
    .map((one): ReviewProposal => {
      const { goal, metric, latest } = one;
      return {
        id: `reading ${goal} ${metric}`,
        subject: 'reading',
        title: message('Measure {0} {1} next week', goal, metric),
        why: latest
          ? message(
              'Last measured on {0}, {1} days ago',
              isoDate(latest.day),
              context.todayNumber - latest.day,
            )
          : message('No reading yet'),
        cautions: [],
        effect: { does: 'remind', goal, line: reminderOf(one) },
      };
    });
}
