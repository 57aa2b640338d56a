import type { Weekday } from '../notation/entries';
import { readTimeSpan, type WallMinutes } from '../notation/time/wall-clock';
import { weekdayNames } from '../notation/time/weekday-names';

/** When a calendar reminds of the look back, once a week. */
export interface ReviewOptions {
  readonly weekday: Weekday;
  readonly at: WallMinutes;
}

/** What was typed about the look back. */
export interface ReviewWords {
  readonly review?: string | undefined;
  readonly 'review-at'?: string | undefined;
}

const usualTime = '18:00';

/** What the words ask for; `undefined` for no look back in the calendar, a sentence where they cannot be understood. */
export function readReviewOptions(words: ReviewWords): ReviewOptions | string | undefined {
  const { review, 'review-at': at = usualTime } = words;
  if (review === undefined) {
    return words['review-at'] === undefined ? undefined : '--review-at goes with --review DAY.';
  }
  const weekday = weekdayNames.indexOf(review.toLowerCase());
  if (weekday < 0) return `"${review}" is not a weekday such as sunday.`;
  const span = readTimeSpan(at);
  if (!span || span.end !== undefined) return `"${at}" is not a time such as 18:00.`;
  return { weekday: (weekday + 1) as Weekday, at: span.start };
}
