import type { Measurement, Metric } from '../journal/journal';
import type { NotePath } from '../journal/note';
import type { Side } from '../notation/entries';
import { convert, type Quantity, type Unit } from '../notation/quantity';
import type { SourceRange } from '../notation/source-range';
import type { DayNumber, IsoDate } from '../notation/time/iso-date';
import { metricUnit } from './metric-meant';
import { mainCondition } from './progress/main-condition';
import type { DayReading, Reading } from './reading';

export type { DayReading, Reading } from './reading';

/** The readings of one side of the body, or those that name none. */
export interface MetricSeries {
  readonly side?: Side;
  /** In order of day and place, in any state. */
  readonly readings: readonly Reading[];
  /** Of the state that the metric is judged by, and so are the fields below: warm and cold readings are never mixed. */
  readonly days: readonly DayReading[];
  readonly first?: DayReading;
  readonly latest?: DayReading;
  /** The single reading that is nearest the good end; `undefined` when it is not known which end is good. */
  readonly best?: Reading;
  /**
   * How much of the way from the start to the target the latest day has done, 0 to 1: 0 also when it lies behind the
   * start, 1 also when it lies beyond the target. `undefined` without a target, or with nothing to compare with:
   * no reading, or a single day and no `from:`.
   */
  readonly shareDone?: number;
}

/** How far a metric has come. */
export interface MetricProgress {
  readonly name: string;
  /** The unit of its target, else of its first value, else of its first reading. */
  readonly unit?: Unit;
  /** Written first reading, target and measuring noise, in the metric's unit. */
  readonly from?: number;
  readonly target?: number;
  readonly noise?: number;
  readonly sides: boolean;
  /** `undefined` while there is nothing that the target could be held against. */
  readonly lowerIsBetter?: boolean;
  /** Left, right, and without a side, each only when it has readings. */
  readonly series: readonly MetricSeries[];
  /** The share of the side that has come less far. */
  readonly shareDone?: number;
  /** Readings whose unit cannot be converted; they are in no series. */
  readonly mismatched: number;
  readonly note: NotePath;
  readonly range: SourceRange;
}

/** The readings as one mean a day, in order of day. */
function averagedByDay(readings: readonly Reading[]): readonly DayReading[] {
  const days = new Map<DayNumber, { date: IsoDate; total: number; count: number }>();
  for (const { day, date, value } of readings) {
    const known = days.get(day) ?? { date, total: 0, count: 0 };
    days.set(day, { date, total: known.total + value, count: known.count + 1 });
  }
  return [...days]
    .map(([day, { date, total, count }]) => ({ date, day, value: total / count, count }))
    .sort((one, other) => one.day - other.day);
}

function readingOf(measurement: Measurement, unit: Unit): Reading | undefined {
  const value = convert(measurement.quantity, unit);
  if (value === undefined) return undefined;
  const { date, day, condition, note, entry } = measurement;
  return {
    date,
    day,
    value,
    written: measurement.quantity,
    ...(condition ? { condition } : {}),
    ...(entry.photo ? { photo: entry.photo.value } : {}),
    note,
    range: entry.range,
  };
}

function shareDone(
  start: number | undefined,
  latest: number,
  target: number | undefined,
): number | undefined {
  if (start === undefined || target === undefined || start === target) return undefined;
  return Math.min(1, Math.max(0, (latest - start) / (target - start)));
}

interface Frame {
  readonly from: number | undefined;
  readonly target: number | undefined;
  readonly lowerIsBetter: boolean | undefined;
  /** The state that the metric is judged by. */
  readonly condition: Reading['condition'];
}

function best(readings: readonly Reading[], lowerIsBetter: boolean | undefined): Reading | undefined {
  if (lowerIsBetter === undefined) return undefined;
  return readings.reduce<Reading | undefined>((found, one) => {
    if (!found) return one;
    const isBetter = lowerIsBetter ? one.value < found.value : one.value > found.value;
    return isBetter ? one : found;
  }, undefined);
}

function seriesOf(side: Side | undefined, readings: readonly Reading[], frame: Frame): MetricSeries {
  const judged = readings.filter(({ condition }) => condition === frame.condition);
  const days = averagedByDay(judged);
  const first = days[0];
  const latest = days.at(-1);
  const start = frame.from ?? (days.length > 1 ? first?.value : undefined);
  const share = latest && shareDone(start, latest.value, frame.target);
  const nearest = best(judged, frame.lowerIsBetter);
  return {
    ...(side ? { side } : {}),
    readings,
    days,
    ...(first ? { first } : {}),
    ...(latest ? { latest } : {}),
    ...(nearest ? { best: nearest } : {}),
    ...(share === undefined ? {} : { shareDone: share }),
  };
}

/** Whether the target lies below where the metric began; `undefined` when that cannot be told. */
function isLowerBetter(start: number | undefined, target: number | undefined): boolean | undefined {
  return start === undefined || target === undefined || start === target ? undefined : target < start;
}

/**
 * How far `metric` has come, from its readings in order of day and place. Readings in another unit of the same
 * dimension are converted; the rest is counted in `mismatched`.
 */
export function metricProgress(metric: Metric, measurements: readonly Measurement[]): MetricProgress {
  const unit = metricUnit(metric) ?? measurements[0]?.quantity.unit;
  const inUnit = (quantity: Quantity | undefined) => quantity && unit && convert(quantity, unit);
  const converted = measurements.map((one) => ({ side: one.side, reading: unit && readingOf(one, unit) }));
  const readable = converted.flatMap(({ side, reading }) => (reading ? [{ side, reading }] : []));
  const from = inUnit(metric.from);
  const target = inUnit(metric.to);
  const noise = inUnit(metric.noise);
  const { condition } = mainCondition(readable.map(({ reading }) => reading));
  const firstJudged = readable.find(({ reading }) => reading.condition === condition);
  const lowerIsBetter = isLowerBetter(from ?? firstJudged?.reading.value, target);
  const frame: Frame = { from, target, lowerIsBetter, condition };
  const series = (['left', 'right', undefined] as const).flatMap((side) => {
    const readings = readable.filter((one) => one.side === side).map((one) => one.reading);
    return readings.length > 0 ? [seriesOf(side, readings, frame)] : [];
  });
  const shares = series.flatMap((one) => (one.shareDone === undefined ? [] : [one.shareDone]));
  return {
    name: metric.name,
    ...(unit ? { unit } : {}),
    ...(from === undefined ? {} : { from }),
    ...(target === undefined ? {} : { target }),
    ...(noise === undefined ? {} : { noise }),
    sides: metric.sides,
    ...(lowerIsBetter === undefined ? {} : { lowerIsBetter }),
    series,
    ...(shares.length === 0 ? {} : { shareDone: Math.min(...shares) }),
    mismatched: measurements.length - readable.length,
    note: metric.note,
    range: metric.entry.range,
  };
}
