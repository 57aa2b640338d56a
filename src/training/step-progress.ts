import type { Goal, Step } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { convert } from '../notation/quantity';
import type { SourceRange } from '../notation/source-range';
import type { IsoDate } from '../notation/time/iso-date';
import { metricMeant } from './metric-meant';
import type { MetricProgress, MetricSeries } from './metric-progress';

/** `done` by its tick, `reached` by a reading, `overdue` when its date has passed, else `open`. */
export type StepState = 'done' | 'reached' | 'overdue' | 'open';

/** A step and how it stands. */
export interface StepProgress {
  readonly id: string;
  readonly by?: IsoDate;
  readonly metric?: string;
  /** In the metric's unit. */
  readonly to?: number;
  readonly state: StepState;
  /** The day of the reading that reached it. */
  readonly reachedOn?: IsoDate;
  readonly note: NotePath;
  readonly range: SourceRange;
}

function dayReached(series: MetricSeries, to: number, lowerIsBetter: boolean): IsoDate | undefined {
  return series.days.find((day) => (lowerIsBetter ? day.value <= to : day.value >= to))?.date;
}

/**
 * The day on which a metric first came to `to`, by the mean of the day. Of a metric with sides both must have come
 * there, and the later of the two days counts.
 */
function reachedOn(metric: MetricProgress, to: number): IsoDate | undefined {
  const { lowerIsBetter, series } = metric;
  if (lowerIsBetter === undefined) return undefined;
  const sides = metric.sides ? series.filter((one) => one.side !== undefined) : series;
  if (metric.sides && sides.length < 2) return undefined;
  const days = sides.map((one) => dayReached(one, to, lowerIsBetter));
  const reached = days.flatMap((day) => (day === undefined ? [] : [day])).sort();
  if (metric.sides) return reached.length === sides.length ? reached.at(-1) : undefined;
  return reached[0];
}

function stateOf(step: Step, reached: IsoDate | undefined, today: IsoDate): StepState {
  if (step.ticked) return 'done';
  if (reached !== undefined) return 'reached';
  return step.by !== undefined && step.by < today ? 'overdue' : 'open';
}

/** How `step` of `goal` stands on the day `today`, given the progress of the goal's metrics. */
export function stepProgress(
  step: Step,
  goal: Goal,
  metrics: readonly MetricProgress[],
  today: IsoDate,
): StepProgress {
  const meant = metricMeant(goal, step.metric)?.name;
  const metric = metrics.find((one) => one.name === meant);
  const to = step.to && metric?.unit && convert(step.to, metric.unit);
  const reached = metric && to !== undefined ? reachedOn(metric, to) : undefined;
  return {
    id: step.id,
    ...(step.by === undefined ? {} : { by: step.by }),
    ...(meant === undefined || step.to === undefined ? {} : { metric: meant }),
    ...(to === undefined ? {} : { to }),
    state: stateOf(step, reached, today),
    ...(reached === undefined ? {} : { reachedOn: reached }),
    note: step.note,
    range: step.entry.range,
  };
}
