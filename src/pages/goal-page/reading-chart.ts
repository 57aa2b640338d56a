import {
  BarController,
  BarElement,
  Chart,
  type ChartConfiguration,
  type ChartDataset,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
} from 'chart.js';
import type { ChartPoint, ChartView, PagePlace, SeriesView, WeekBar } from '../goal-page-data';
import { type ChartLook, dayAxis, tooltip } from '../parts/chart-frame';
import type { ThemeColours } from '../parts/theme';
import { chartBands } from './chart-bands';
import { chartMarks } from './chart-marks';

Chart.register(LineController, BarController, LineElement, PointElement, BarElement, LinearScale, Tooltip);

/** Pixels kept above the chart for the names of today and the goal's day. */
const roomAbove = 34;

type Dataset = ChartDataset<'bar' | 'line', { x: number; y: number }[]>;

/** A dataset, with what its points say and where they lead. */
interface Layer {
  readonly dataset: Dataset;
  readonly points: readonly { readonly text: string; readonly place?: PagePlace }[];
}

function positions(points: readonly ChartPoint[]): { x: number; y: number }[] {
  return points.map(({ day, value }) => ({ x: day, y: value }));
}

/** Shape and dash of a series, so that left and right differ without their colours. */
function lookOf(side: SeriesView['side']): { shape: 'circle' | 'triangle'; dash: number[] } {
  return side === 'right' ? { shape: 'triangle', dash: [6, 4] } : { shape: 'circle', dash: [] };
}

function seriesLayers(series: SeriesView, colours: ThemeColours): readonly Layer[] {
  const { shape, dash } = lookOf(series.side);
  const colour = colours[series.side];
  const radius = shape === 'triangle' ? 5.5 : 4.5;
  return [
    {
      points: series.days,
      dataset: {
        type: 'line',
        yAxisID: 'y',
        data: positions(series.days),
        borderColor: colour,
        borderDash: dash,
        // Where a line runs through the readings, it is that one that should be seen.
        borderWidth: series.trend ? 0.75 : 2,
        pointStyle: shape,
        pointBackgroundColor: colour,
        pointBorderColor: colour,
        pointRadius: radius,
        pointHoverRadius: radius + 1.5,
        pointHitRadius: 8,
        order: 1,
      },
    },
    {
      points: series.repeats,
      dataset: {
        type: 'line',
        yAxisID: 'y',
        showLine: false,
        data: positions(series.repeats),
        pointStyle: shape,
        pointBackgroundColor: 'transparent',
        pointBorderColor: colour,
        pointRadius: 3,
        pointHoverRadius: 4.5,
        pointHitRadius: 4,
        order: 2,
      },
    },
    {
      points: series.others,
      dataset: {
        type: 'line',
        yAxisID: 'y',
        showLine: false,
        data: positions(series.others),
        pointStyle: series.side === 'right' ? 'crossRot' : 'cross',
        pointBorderColor: colour,
        pointBorderWidth: 1.5,
        pointRadius: 4.5,
        pointHoverRadius: 6,
        pointHitRadius: 6,
        order: 2,
      },
    },
  ];
}

function stepLayer(view: ChartView, colours: ThemeColours): Layer {
  return {
    points: view.steps,
    dataset: {
      type: 'line',
      yAxisID: 'y',
      showLine: false,
      data: positions(view.steps),
      pointStyle: 'rectRot',
      pointBackgroundColor: view.steps.map((step) => (step.isDone ? colours.text : colours.background)),
      pointBorderColor: colours.text,
      pointBorderWidth: 1.5,
      pointRadius: 6,
      pointHoverRadius: 7.5,
      pointHitRadius: 6,
      // A step on the last day or at the end of the axis is drawn whole.
      clip: 8,
      order: 0,
    },
  };
}

function sessionLayer(weeks: readonly WeekBar[], colours: ThemeColours): Layer {
  return {
    points: weeks,
    dataset: {
      type: 'bar',
      yAxisID: 'sessions',
      // A week's bar stands over its middle.
      data: weeks.map(({ monday, done }) => ({ x: monday + 3, y: done })),
      backgroundColor: colours.session,
      grouped: false,
      maxBarThickness: 14,
      order: 3,
    },
  };
}

function loadLayer(weeks: readonly WeekBar[], colours: ThemeColours): Layer {
  return {
    points: weeks.map(({ loadText }) => ({ text: loadText })),
    dataset: {
      type: 'bar',
      yAxisID: 'loads',
      data: weeks.map(({ monday, load }) => ({ x: monday + 3, y: load })),
      // Hollow: at least so much.
      backgroundColor: weeks.map(({ loadIsLeast }) => (loadIsLeast ? 'transparent' : colours.load)),
      borderColor: colours.load,
      borderWidth: 1.5,
      grouped: false,
      maxBarThickness: 14,
      order: 3,
    },
  };
}

/** The axis of the bars beneath the readings: from nothing to the most, and nothing between. */
function barScale(most: number, colours: ThemeColours, numbers: Intl.NumberFormat, font: object) {
  return {
    type: 'linear',
    position: 'left',
    stack: 'page',
    stackWeight: 1,
    min: 0,
    // Room above the highest bar keeps its number clear of the lowest one of what stands above.
    max: most * 1.6,
    border: { color: colours.grid },
    grid: { display: false },
    ticks: {
      color: colours.text,
      font,
      callback: (value: number | string) => numbers.format(Number(value)),
    },
    afterBuildTicks(axis: { ticks: { value: number }[] }) {
      axis.ticks = [{ value: 0 }, { value: most }];
    },
  } as const;
}

/** Whether anything is known about the load of any week. */
function hasLoads({ weeks }: ChartView): boolean {
  return weeks.some(({ load }) => load > 0);
}

function scalesOf(view: ChartView, colours: ThemeColours, locale: string) {
  const numbers = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
  const font = { family: colours.font, size: 12 };
  const values = [
    ...view.series.flatMap((series) =>
      [...series.days, ...series.repeats, ...series.others].map(({ value }) => value),
    ),
    ...view.steps.map(({ value }) => value),
    ...view.series.flatMap(({ trend }) => [
      ...(trend?.line ?? []).map(({ value }) => value),
      ...(trend?.fan ?? []).flatMap(({ lower, upper }) => [lower, upper]),
    ]),
    ...(view.target ? [view.target.at] : []),
  ];
  const room = (Math.max(...values) - Math.min(...values)) * 0.06 || 1;
  const bars = (of: 'done' | 'load') =>
    barScale(Math.max(1, ...view.weeks.map((week) => week[of])), colours, numbers, font);
  return {
    x: dayAxis(view.first, view.last, { colours, locale }),
    // The first of a stack stands at the bottom.
    ...(view.weeks.length > 0 ? { sessions: bars('done') } : {}),
    ...(hasLoads(view) ? { loads: bars('load') } : {}),
    y: {
      type: 'linear',
      position: 'left',
      stack: 'page',
      stackWeight: 6,
      suggestedMin: Math.min(...values) - room,
      suggestedMax: Math.max(...values) + room,
      border: { color: colours.grid },
      grid: { color: colours.grid },
      ticks: {
        color: colours.text,
        font,
        maxTicksLimit: 7,
        callback: (value: number | string) => `${numbers.format(Number(value))}${view.unit}`,
      },
    },
  };
}

/**
 * Draws the readings of a metric over the days with the line through them and how sure it is, its target, today, the
 * goal's day, steps, and beneath them the sessions done in each week and their load.
 * @param open Called with the place behind a point that was clicked.
 */
export function drawReadings(
  canvas: HTMLCanvasElement,
  view: ChartView,
  look: ChartLook,
  open: (place: PagePlace) => void,
): Chart {
  const { colours, locale } = look;
  const layers: readonly Layer[] = [
    ...view.series.flatMap((series) => seriesLayers(series, colours)),
    stepLayer(view, colours),
    ...(view.weeks.length > 0 ? [sessionLayer(view.weeks, colours)] : []),
    ...(hasLoads(view) ? [loadLayer(view.weeks, colours)] : []),
  ];
  const pointAt = (layer: number | undefined, index: number | undefined) =>
    layers[layer ?? -1]?.points[index ?? -1];
  const configuration: ChartConfiguration<'bar' | 'line', { x: number; y: number }[]> = {
    type: 'line',
    data: { datasets: layers.map(({ dataset }) => dataset) },
    plugins: [chartBands(view, colours), chartMarks(view, colours)],
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      layout: { padding: { top: roomAbove, right: 10 } },
      interaction: { mode: 'nearest', intersect: true },
      scales: scalesOf(view, colours, locale) as NonNullable<
        NonNullable<typeof configuration.options>['scales']
      >,
      plugins: {
        tooltip: tooltip(look, (layer, index) => pointAt(layer, index)?.text ?? ''),
      },
      onHover: (_event, elements) => {
        const place = pointAt(elements[0]?.datasetIndex, elements[0]?.index)?.place;
        canvas.classList.toggle('over-point', place !== undefined);
      },
      onClick: (_event, elements) => {
        const place = pointAt(elements[0]?.datasetIndex, elements[0]?.index)?.place;
        if (place) open(place);
      },
    },
  };
  return new Chart(canvas, configuration);
}
