import type { FiguresView } from '../../pages/goal-page-data';
import type { MetricFigures, SeriesFigures } from '../../training/progress/metric-figures';
import { isRefused } from '../../training/progress/metric-trend';
import { type PageContext, preciseInWords, say } from '../page/page-context';
import { refusalInWords } from '../page/refusal-words';
import { countInWords, noiseBasis } from './figure-sentences';
import { conditionInWords, seriesKey, sideName } from './series-view';

type Cell = (series: SeriesFigures, metric: MetricFigures, context: PageContext) => string;

const day = (date: Parameters<PageContext['words']['dates']['day']>[0], { words, today }: PageContext) =>
  words.dates.day(date, today);

const weekly: Cell = ({ trend }, { unit }, context) => {
  if (isRefused(trend)) return refusalInWords(trend, context);
  const slope = preciseInWords(context, trend.perWeek, unit);
  const { perWeekInterval: interval } = trend;
  if ('status' in interval) {
    return say(context, '{0}; no interval: {1}', slope, refusalInWords(interval, context));
  }
  return say(
    context,
    '{0} (95 %: {1} to {2})',
    slope,
    preciseInWords(context, interval.lower, unit),
    preciseInWords(context, interval.upper, unit),
  );
};

const test: Cell = ({ trend }, _metric, context) => {
  if (isRefused(trend)) return refusalInWords(trend, context);
  if (trend.test.status !== 'estimated') return refusalInWords(trend.test, context);
  const { p, n } = trend.test;
  return p < 0.001
    ? say(context, 'p below 0.001 ({0} days)', n)
    : say(context, 'p = {0} ({1} days)', context.words.number(p, 3), n);
};

const changeSince =
  (which: 'sinceFirst' | 'sinceLast'): Cell =>
  (series, { unit }, context) => {
    const change = series[which];
    if (change.status !== 'estimated') return refusalInWords(change, context);
    const size = preciseInWords(context, change.change, unit);
    const noise = preciseInWords(context, change.noise, unit);
    const from = day(change.from.date, context);
    return change.withinNoise
      ? say(context, '{0} since {1}; within measuring noise ({2})', size, from, noise)
      : say(context, '{0} since {1}; more than measuring noise ({2})', size, from, noise);
  };

const arrival: Cell = ({ forecast, reachedOn }, _metric, context) => {
  if (reachedOn !== undefined) return say(context, 'reached on {0}', day(reachedOn, context));
  if (forecast.status === 'not-estimable') return refusalInWords(forecast, context);
  if (forecast.status === 'reached') return say(context, 'about {0}', day(forecast.at, context));
  return say(
    context,
    '{0} (95 %: {1} to {2})',
    day(forecast.at, context),
    day(forecast.earliest, context),
    day(forecast.latest, context),
  );
};

const needed: Cell = ({ pace, verdict }, { unit }, context) => {
  if (verdict.code === 'reached') return say(context, 'the target is reached');
  return pace.status === 'estimated'
    ? preciseInWords(context, pace.perWeek, unit)
    : refusalInWords(pace, context);
};

const plateau: Cell = ({ plateau: found }, { unit }, context) => {
  if (found.status !== 'estimated') return refusalInWords(found, context);
  const change = preciseInWords(context, found.change, unit);
  return found.isPlateau
    ? say(context, 'yes: {0} in {1} weeks ({2} days)', change, found.weeks, found.n)
    : say(context, 'no: {0} in {1} weeks ({2} days)', change, found.weeks, found.n);
};

function rows(context: PageContext): readonly (readonly [string, Cell])[] {
  return [
    [say(context, 'Measured'), (series) => countInWords(series, context)],
    [say(context, 'When the target is reached'), arrival],
    [say(context, 'Change a week'), weekly],
    [say(context, 'Change a week that the date asks for'), needed],
    [say(context, 'Steady change, or chance?'), test],
    [say(context, 'Since the first day'), changeSince('sinceFirst')],
    [say(context, 'Since the day before'), changeSince('sinceLast')],
    [
      say(context, 'Typical error of one reading'),
      ({ noise }, { unit }) =>
        say(
          context,
          '{0} ({1})',
          preciseInWords(context, noise.typicalError, unit),
          noiseBasis(noise, unit, context),
        ),
    ],
    [
      say(context, 'Smallest change beyond noise'),
      ({ noise }, { unit }) => preciseInWords(context, noise.detectableChange, unit),
    ],
    [say(context, 'Standing still'), plateau],
  ];
}

function columnLabel(series: SeriesFigures, isSaid: boolean, context: PageContext): string {
  const side = sideName(series.side, context);
  if (!isSaid) return side;
  const state = conditionInWords(series.condition, context);
  return state === '' ? side : say(context, '{0}, {1}', side, state);
}

/** All figures of a metric, a column a series; `undefined` without readings. */
export function figuresTable(metric: MetricFigures, context: PageContext): FiguresView | undefined {
  if (metric.series.length === 0) return undefined;
  const isSaid = metric.conditions.length > 1;
  return {
    caption: say(context, 'Figures of {0}', metric.name),
    corner: say(context, 'Figure'),
    columns: metric.series.map((series) => ({
      of: seriesKey(series),
      label: columnLabel(series, isSaid, context),
    })),
    rows: rows(context).map(([name, cell]) => ({
      name,
      cells: metric.series.map((series) => cell(series, metric, context)),
    })),
  };
}
