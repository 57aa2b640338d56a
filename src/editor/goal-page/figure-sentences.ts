import type { Unit } from '../../notation/quantity';
import type { MeasuringNoise } from '../../training/progress/measuring-noise';
import type { MetricFigures, SeriesFigures } from '../../training/progress/metric-figures';
import { isRefused } from '../../training/progress/metric-trend';
import { type PageContext, preciseInWords, say, sayWithDays } from '../page/page-context';
import { sideName } from './series-view';

/** A sentence about one side, its name in front where there is one. */
function about(series: SeriesFigures, sentence: string, context: PageContext): string {
  return series.side === undefined
    ? sentence
    : say(context, '{0}: {1}', sideName(series.side, context), sentence);
}

/** `13 days measured, 42 readings`. */
export function countInWords({ days, readings }: SeriesFigures, context: PageContext): string {
  const measured =
    days.length === 1 ? say(context, '1 day measured') : say(context, '{0} days measured', days.length);
  return readings.length === days.length
    ? measured
    : say(context, '{0}, {1} readings', measured, readings.length);
}

/** Whether and when the target is reached, in one sentence with its number of days. */
export function verdictSentence(series: SeriesFigures, context: PageContext): readonly string[] {
  const { verdict } = series;
  if (verdict.code === 'no-target') return [];
  const sentence = sayWithDays(context, verdict.message);
  const isRange = verdict.earliest !== undefined;
  const whole = isRange
    ? say(context, '{0}. From {1}.', sentence, countInWords(series, context))
    : say(context, '{0}.', sentence);
  return [about(series, whole, context)];
}

/**
 * Why a pace beyond those of the readings need not mean that the date is missed: the needed pace starts from the line
 * as it is drawn, at the latest reading; the range of dates lets the line stand elsewhere, and lets it go on since.
 */
function reconciled({ pace, verdict }: SeriesFigures, context: PageContext): string {
  const holds = verdict.code === 'in-time' || verdict.code === 'may-be-late';
  return holds && pace.status === 'estimated' && pace.comparison === 'faster-than-observed'
    ? say(
        context,
        ' That is faster than they show: the date is met only if the line is further along by now than it is drawn, which the range of dates allows for.',
      )
    : '';
}

/**
 * The pace that the date asks for, beside the interval of the observed one; both are said as they are signed. Nothing
 * once the target was reached: no pace is asked for then.
 */
export function paceSentence(
  series: SeriesFigures,
  { unit }: MetricFigures,
  context: PageContext,
): readonly string[] {
  const { pace, trend, verdict } = series;
  if (pace.status !== 'estimated' || verdict.code === 'reached') return [];
  const needed = preciseInWords(context, pace.perWeek, unit);
  const observed = isRefused(trend) ? undefined : trend.perWeekInterval;
  const sentence =
    observed === undefined || 'status' in observed
      ? say(context, 'The date asks for {0} a week from today; the readings do not show a pace yet.', needed)
      : say(
          context,
          'The date asks for {0} a week from today; the readings show {1} to {2} a week (95 %).{3}',
          needed,
          preciseInWords(context, observed.lower, unit),
          preciseInWords(context, observed.upper, unit),
          reconciled(series, context),
        );
  return [about(series, sentence, context)];
}

/** Where the typical error comes from. */
export function noiseBasis(noise: MeasuringNoise, unit: Unit | undefined, context: PageContext): string {
  const { basis, n, interval, source } = noise;
  switch (basis) {
    case 'repeats':
      return interval
        ? say(
            context,
            'from {0} repeated readings of your own; 95 %: {1} to {2}',
            n,
            preciseInWords(context, interval.lower, unit),
            preciseInWords(context, interval.upper, unit),
          )
        : say(context, 'from {0} repeated readings of your own', n);
    case 'few-repeats':
      return say(context, 'from only {0} repeated readings of your own', n);
    case 'written':
      return say(context, 'as written beside the metric');
    default:
      return source
        ? say(context, 'assumed, not measured. {0}', context.words.say(source))
        : say(context, 'assumed, not measured');
  }
}

/** How much readings wander by themselves; once, where both sides have the same. */
export function noiseSentences(
  all: readonly SeriesFigures[],
  { unit }: MetricFigures,
  context: PageContext,
): readonly string[] {
  const sentences = all.map(({ noise }) =>
    say(
      context,
      'Between two single readings a change below {0} can be measuring noise alone (typical error {1}, {2}).',
      preciseInWords(context, noise.detectableChange, unit),
      preciseInWords(context, noise.typicalError, unit),
      noiseBasis(noise, unit, context),
    ),
  );
  return new Set(sentences).size === 1
    ? sentences.slice(0, 1)
    : all.map((series, index) => about(series, sentences[index] ?? '', context));
}

/** That a series has stood still although there was training for it. */
export function plateauSentence(series: SeriesFigures, context: PageContext): readonly string[] {
  const { plateau } = series;
  if (plateau.status !== 'estimated' || !plateau.isPlateau) return [];
  return [
    about(
      series,
      say(
        context,
        'No change beyond measuring noise in the last {0} weeks ({1} days measured), although {2} sessions were done.',
        plateau.weeks,
        plateau.n,
        plateau.sessionsDone,
      ),
      context,
    ),
  ];
}

/** The difference between the sides, when it is more than measuring explains. */
export function sidesSentence({ sides, unit }: MetricFigures, context: PageContext): readonly string[] {
  if (sides?.status !== 'estimated' || sides.beyondNoise !== true || sides.noise === undefined) return [];
  const size = preciseInWords(context, Math.abs(sides.difference), unit);
  const noise = preciseInWords(context, sides.noise, unit);
  const share =
    sides.percentOfLarger === undefined
      ? ''
      : say(context, ', {0} of the larger', context.words.quantity(Math.abs(sides.percentOfLarger), '%'));
  const values = [size, share, noise, sides.n] as const;
  if (sides.ahead !== undefined) {
    return [
      sides.ahead === 'left'
        ? say(
            context,
            'The left is {0} ahead of the right{1}; up to {2} could be measuring noise ({3} readings).',
            ...values,
          )
        : say(
            context,
            'The right is {0} ahead of the left{1}; up to {2} could be measuring noise ({3} readings).',
            ...values,
          ),
    ];
  }
  return [
    sides.larger === 'left'
      ? say(
          context,
          'The left reads {0} more than the right{1}; up to {2} could be measuring noise ({3} readings).',
          ...values,
        )
      : say(
          context,
          'The right reads {0} more than the left{1}; up to {2} could be measuring noise ({3} readings).',
          ...values,
        ),
  ];
}
