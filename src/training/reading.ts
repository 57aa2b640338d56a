import type { NotePath } from '../journal/note';
import type { Quantity } from '../notation/quantity';
import type { SourceRange } from '../notation/source-range';
import type { DayNumber, IsoDate } from '../notation/time/iso-date';

/** One reading, in the metric's unit. */
export interface Reading {
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly value: number;
  /** As it was written, in its own unit. */
  readonly written: Quantity;
  readonly condition?: 'warm' | 'cold';
  readonly photo?: string;
  readonly note: NotePath;
  readonly range: SourceRange;
}

/** The readings of one day as one. */
export interface DayReading {
  readonly date: IsoDate;
  readonly day: DayNumber;
  /** Their mean. */
  readonly value: number;
  readonly count: number;
}
