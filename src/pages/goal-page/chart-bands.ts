import type { Chart, Plugin } from 'chart.js';
import type { BandDay, ChartView, SeriesView } from '../goal-page-data';
import type { ThemeColours } from '../parts/theme';

/** How a band is painted: how strongly it is filled, and the dashes of its edge. */
interface Paint {
  readonly fill: number;
  readonly edge: number;
  readonly dash: readonly number[];
}

const paints = {
  noise: { fill: 0.06, edge: 0.55, dash: [1, 4] },
  band: { fill: 0.22, edge: 0, dash: [] },
  fan: { fill: 0.1, edge: 0.9, dash: [5, 4] },
} as const satisfies Record<string, Paint>;

function paintBand(chart: Chart, days: readonly BandDay[], colour: string, paint: Paint): void {
  const { ctx, scales } = chart;
  const { x, y } = scales;
  if (!x || !y || days.length === 0) return;
  const upper = days.map((one) => [x.getPixelForValue(one.day), y.getPixelForValue(one.upper)] as const);
  const lower = days.map((one) => [x.getPixelForValue(one.day), y.getPixelForValue(one.lower)] as const);
  const follow = (points: readonly (readonly [number, number])[], isFirst: boolean): void => {
    for (const [index, [left, top]] of points.entries()) {
      if (isFirst && index === 0) ctx.moveTo(left, top);
      else ctx.lineTo(left, top);
    }
  };
  ctx.fillStyle = colour;
  ctx.strokeStyle = colour;
  ctx.globalAlpha = paint.fill;
  ctx.beginPath();
  follow(upper, true);
  follow([...lower].reverse(), false);
  ctx.closePath();
  ctx.fill();
  if (paint.edge === 0) return;
  ctx.globalAlpha = paint.edge;
  ctx.lineWidth = 1;
  ctx.setLineDash([...paint.dash]);
  for (const edge of [upper, lower]) {
    ctx.beginPath();
    follow(edge, true);
    ctx.stroke();
  }
}

function noiseBand({ trend, noise }: SeriesView): readonly BandDay[] {
  return (trend?.line ?? []).map(({ day, value }) => ({
    day,
    lower: value - noise.reach,
    upper: value + noise.reach,
  }));
}

function paintLine(chart: Chart, { trend, side }: SeriesView, colours: ThemeColours): void {
  const { ctx, scales } = chart;
  const [from, to] = trend?.line ?? [];
  const { x, y } = scales;
  if (!from || !to || !x || !y) return;
  ctx.globalAlpha = 1;
  ctx.strokeStyle = colours[side];
  ctx.lineWidth = 2.5;
  ctx.setLineDash(side === 'right' ? [6, 4] : []);
  ctx.beginPath();
  ctx.moveTo(x.getPixelForValue(from.day), y.getPixelForValue(from.value));
  ctx.lineTo(x.getPixelForValue(to.day), y.getPixelForValue(to.value));
  ctx.stroke();
}

/** Draws, behind the readings of each series, its measuring noise, its line with its band, and where that leads. */
export function chartBands(view: ChartView, colours: ThemeColours): Plugin {
  return {
    id: 'chart-bands',
    beforeDatasetsDraw(chart) {
      const { ctx, chartArea, scales } = chart;
      const { y } = scales;
      if (!y) return;
      ctx.save();
      ctx.beginPath();
      ctx.rect(chartArea.left, y.top, chartArea.right - chartArea.left, y.bottom - y.top);
      ctx.clip();
      // Two noise bands that lie over each other are told apart by their edges alone.
      const noise = view.series.length > 1 ? { ...paints.noise, fill: 0 } : paints.noise;
      for (const series of view.series) {
        const colour = colours[series.side];
        paintBand(chart, noiseBand(series), colour, noise);
        paintBand(chart, series.trend?.band ?? [], colour, paints.band);
        paintBand(chart, series.trend?.fan ?? [], colour, paints.fan);
        paintLine(chart, series, colours);
      }
      ctx.restore();
    },
  };
}
