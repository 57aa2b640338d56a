import type { Journal } from '../journal/journal';
import { painCaution } from '../training/cautions';
import { fillMessage, type Message } from '../training/finding';
import { checkContext } from '../training/week-under-check';
import { message } from '../training/wording';
import type { Steps } from './solver/slices';
import type { TimeOfDay } from './week-problem/places';
import { reviewWeek, type WeekReview, type WeekReviewOptions } from './week-review';
import { weekToPlan, weekToReview } from './week-review/review-due';
import { keepApartProposals, newGapProposals } from './week-review-flow/gap-proposals';
import { moveProposals } from './week-review-flow/move-proposals';
import { readingProposals } from './week-review-flow/reading-proposals';
import { draftReview, type PlannedReview, planReviewSteps } from './week-review-flow/review-draft';
import type { ReviewedWeeks, ReviewProposal } from './week-review-flow/review-proposal';
import { sizeProposals } from './week-review-flow/size-proposals';

/** What a review is made with; the weeks follow from the day. */
export interface ReviewFlowOptions extends Omit<WeekReviewOptions, 'week'> {
  readonly timeOfDay?: TimeOfDay;
  readonly nodeLimit?: number;
}

/** A review, ready to be walked through. */
export interface ReviewFlow extends ReviewedWeeks {
  readonly review: WeekReview;
  /** What is said about pain that is not marked as over, on the screen alone. */
  readonly pain: readonly Message[];
  readonly proposals: readonly ReviewProposal[];
}

function checkOf({ today, zone, acceptedChance }: ReviewFlowOptions) {
  return { today, zone, ...(acceptedChance === undefined ? {} : { acceptedChance }) };
}

/** What happened in the week, and what could be done otherwise: the first two steps of a review. */
export function* reviewFlowSteps(journal: Journal, options: ReviewFlowOptions): Steps<ReviewFlow> {
  const check = checkOf(options);
  const context = checkContext(journal, check);
  const weeks: ReviewedWeeks = {
    reviewed: weekToReview(context, options.day),
    planned: weekToPlan(context, options.day),
    check,
  };
  yield 0;
  const review = reviewWeek(journal, { ...options, week: weeks.reviewed });
  yield 0;
  const moves = yield* moveProposals(context, weeks);
  yield 0;
  const pains = context.openPains();
  const regions = pains.map(({ region }) => region).join(', ');
  return {
    ...weeks,
    review,
    pain:
      pains.length === 0
        ? []
        : [message('Pain that no note says is over: {0}', regions), message(painCaution)],
    proposals: [
      ...moves,
      ...keepApartProposals(context, weeks),
      ...newGapProposals(context, weeks),
      ...sizeProposals(context, weeks, review.facts.history),
      ...readingProposals(context, weeks, options.say ?? fillMessage),
    ],
  };
}

/**
 * The next week, planned as if the facts were written and the taken proposals stood: the third step of a review.
 * @param taken ids of proposals
 * @throws RangeError when the journal has changed since `flow` was made
 */
export function* nextWeekSteps(
  journal: Journal,
  flow: ReviewFlow,
  taken: ReadonlySet<string>,
  options: ReviewFlowOptions,
): Steps<PlannedReview> {
  const { reviewed, planned, check } = flow;
  const draft = draftReview(journal, {
    reviewed,
    planned,
    check,
    facts: flow.review.changes,
    proposals: flow.proposals.filter(({ id }) => taken.has(id)),
    ...(options.timeOfDay === undefined ? {} : { timeOfDay: options.timeOfDay }),
    ...(options.nodeLimit === undefined ? {} : { nodeLimit: options.nodeLimit }),
    ...(options.say === undefined ? {} : { say: options.say }),
  });
  yield 0;
  return yield* planReviewSteps(draft);
}
