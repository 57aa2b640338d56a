import type { Journal } from '../journal/journal';
import type { Entry, Side } from '../notation/entries';
import { formatQuantity, type Quantity } from '../notation/quantity';
import type { IsoDate } from '../notation/time/iso-date';
import { formatField } from '../notation/write-entry';
import { addToDay } from './day-note';
import type { NoteChange } from './note-change';

/** A reading to write down. */
export interface MeasurementToWrite {
  readonly goal: string;
  /** May be left out when the goal has one metric only. */
  readonly metric?: string;
  readonly quantity: Quantity;
  readonly side?: Side;
  readonly condition?: 'warm' | 'cold';
  /** Path of a photo, as the note is to name it. */
  readonly photo?: string;
}

/** `- #measure low-split gap 9.5cm side:left warm`. */
export function measurementLine(measurement: MeasurementToWrite): string {
  const fields = ['- #measure', measurement.goal];
  if (measurement.metric !== undefined) fields.push(measurement.metric);
  fields.push(formatQuantity(measurement.quantity));
  if (measurement.side !== undefined) fields.push(formatField({ name: 'side', text: measurement.side }));
  if (measurement.condition !== undefined) fields.push(measurement.condition);
  if (measurement.photo !== undefined) fields.push(formatField({ name: 'photo', text: measurement.photo }));
  return fields.join(' ');
}

const behindMeasurementsOrSessions: readonly ((entry: Entry) => boolean)[] = [
  (entry) => entry.tag === 'measure',
  (entry) => entry.tag === 'session',
];

/** Adds a reading to the day's note, behind its other readings, or in a new note when the day has none. */
export function addMeasurement(
  journal: Journal,
  date: IsoDate,
  measurement: MeasurementToWrite,
): readonly NoteChange[] {
  return addToDay(journal, date, [measurementLine(measurement)], behindMeasurementsOrSessions);
}
