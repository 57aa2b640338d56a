import assert from 'node:assert/strict';
import { finish } from '../../../src/planning/solver/slices';
import {
  nextWeekSteps,
  type ReviewFlow,
  type ReviewFlowOptions,
  reviewFlowSteps,
} from '../../../src/planning/week-review-flow';
import { type PlannedReview, reviewChanges } from '../../../src/planning/week-review-flow/review-draft';
import { fillMessage } from '../../../src/training/finding';
import { applied, date, journalOf, type Notes } from '../journal-of';

/** 2026-03-01 is a Sunday: the ninth week is looked back on, and the tenth is planned. */
export const sunday = '2026-03-01';

function optionsOf(more: Partial<ReviewFlowOptions> & { readonly on?: string }): ReviewFlowOptions {
  const { on = sunday, ...options } = more;
  return { today: date(on), zone: 'UTC', ...options };
}

/** The first two steps of a review. */
export function flowOf(notes: Notes, more: Partial<ReviewFlowOptions> & { on?: string } = {}): ReviewFlow {
  return finish(reviewFlowSteps(journalOf(notes), optionsOf(more)));
}

/** The proposals of a review: what each is about, what it does, and why. */
export function proposalsOf(notes: Notes, more: Partial<ReviewFlowOptions> & { on?: string } = {}) {
  return flowOf(notes, more).proposals.map(
    ({ subject, title, why }) => `${subject}: ${fillMessage(title)} | ${fillMessage(why)}`,
  );
}

/** The third step, with the proposals taken that are about one of the subjects. */
export function planned(
  notes: Notes,
  taken: readonly string[] = [],
  more: Partial<ReviewFlowOptions> & { on?: string } = {},
): PlannedReview {
  const journal = journalOf(notes);
  const options = optionsOf(more);
  const flow = finish(reviewFlowSteps(journal, options));
  const chosen = flow.proposals.filter(({ subject }) => taken.includes(subject));
  for (const subject of taken)
    assert.ok(
      chosen.some((one) => one.subject === subject),
      `nothing is proposed about ${subject}`,
    );
  return finish(nextWeekSteps(journal, flow, new Set(chosen.map(({ id }) => id)), options));
}

/** The places of the next week's new sessions: `Mon 18:00 skill`. */
export function places({ plan }: PlannedReview): readonly string[] {
  return plan.placed.map(({ date: day, start, kind }) => {
    const weekday = new Date(`${day}T00:00Z`).toUTCString().slice(0, 3);
    const time = start === undefined ? '' : ` ${new Date(start * 60_000).toISOString().slice(11, 16)}`;
    return `${weekday}${time} ${kind}`;
  });
}

/** The notes after everything is written. */
export function written(notes: Notes, review: PlannedReview): Notes {
  return applied(notes, reviewChanges(review, { sessions: review.plan.placed, restDays: true }));
}
