import type { DayNumber } from '../notation/time/iso-date';
import type { Measurement } from './journal';

/** Index of the first of readings in order of day that is not before `day`; their number when all are. */
function firstNotBefore(readings: readonly Measurement[], day: DayNumber): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.day ?? Number.POSITIVE_INFINITY) < day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The readings of one goal in order of day. Only those of days that changed are worked out again. */
export class GoalReadings {
  #readings: readonly Measurement[] = [];
  readonly #changed: Set<DayNumber>;

  /** @param days every day with readings of the goal, in any order */
  constructor(days: Iterable<DayNumber>) {
    this.#changed = new Set(days);
  }

  /** Tells that the notes of a day are others now. */
  changedOn(day: DayNumber): void {
    this.#changed.add(day);
  }

  /** All readings. @param on gives those of one day, in order */
  all(on: (day: DayNumber) => readonly Measurement[]): readonly Measurement[] {
    if (this.#changed.size === 0) return this.#readings;
    // What was given out before stays as it is. Years of readings are copied in microseconds, if in one go.
    const readings = this.#readings.slice();
    const days = [...this.#changed].sort((one, other) => one - other);
    this.#changed.clear();
    const isFirst = readings.length === 0;
    for (const day of days) {
      const from = isFirst ? readings.length : firstNotBefore(readings, day);
      const end = isFirst ? from : firstNotBefore(readings, day + 1);
      readings.splice(from, end - from, ...on(day));
    }
    this.#readings = readings;
    return this.#readings;
  }
}
