import { fillMessage } from '../training/finding';
import type { GoalFigures } from '../training/progress/goal-figures';
import type { MeasuringNoise } from '../training/progress/measuring-noise';
import type { MetricFigures, SeriesFigures } from '../training/progress/metric-figures';
import { number } from './printed-words';

function noiseValue({ own, ...noise }: MeasuringNoise) {
  return { ...noise, ownRepeats: own };
}

/** A series without its readings: they stand with the goal's metrics. */
function seriesValue({ readings, noise, trend, ...series }: SeriesFigures) {
  return { ...series, readings: readings.length, noise: noiseValue(noise), trend };
}

function metricValue({ series, ...metric }: MetricFigures) {
  return { ...metric, series: series.map(seriesValue) };
}

/** The figures of a goal, for JSON. */
export function figuresValue({ metrics, steps, worst }: GoalFigures) {
  return {
    metrics: metrics.map(metricValue),
    steps,
    verdict: worst && { metric: worst.metric.name, side: worst.series.side, ...worst.series.verdict },
  };
}

function seriesName(metric: MetricFigures, { side, condition }: SeriesFigures): string {
  return [metric.name, side, condition].filter((word) => word !== undefined).join(', ');
}

const noiseWords: Readonly<Record<MeasuringNoise['basis'], string>> = {
  repeats: 'from your repeats',
  'few-repeats': 'from few repeats',
  written: 'as written',
  assumed: 'assumed',
};

function seriesLine(metric: MetricFigures, series: SeriesFigures): string {
  const { trend, noise, plateau, sinceFirst, verdict } = series;
  const unit = metric.unit === undefined ? '' : ` ${metric.unit}`;
  const { perWeekInterval = undefined } = trend.status === 'estimated' ? trend : {};
  return [
    `${seriesName(metric, series)}: ${fillMessage(verdict.message)}`,
    ...(trend.status === 'estimated' && perWeekInterval && !('status' in perWeekInterval)
      ? [
          `${number(trend.perWeek)}${unit} a week (${number(perWeekInterval.lower)} to ${number(perWeekInterval.upper)}, ${trend.n} days)`,
        ]
      : []),
    ...(sinceFirst.status === 'estimated'
      ? [
          `${number(sinceFirst.change)}${unit} since ${sinceFirst.from.date}${sinceFirst.withinNoise ? ', within measuring noise' : ''}`,
        ]
      : []),
    `noise: changes below ${number(noise.detectableChange)}${unit} (${noiseWords[noise.basis]})`,
    ...(plateau.status === 'estimated' && plateau.isPlateau
      ? [`no change beyond noise in ${plateau.weeks} weeks`]
      : []),
  ].join('; ');
}

/** The figures of a goal for people: a line a series, and one for the sides. */
export function figuresLines({ metrics }: GoalFigures): readonly string[] {
  return metrics.flatMap((metric) => {
    const { sides, unit = '' } = metric;
    return [
      ...metric.series.map((series) => seriesLine(metric, series)),
      ...(sides?.status === 'estimated' && sides.beyondNoise === true
        ? [
            `${metric.name}: ${sides.larger} ${number(Math.abs(sides.difference))} ${unit} more than the other side`,
          ]
        : []),
    ];
  });
}
