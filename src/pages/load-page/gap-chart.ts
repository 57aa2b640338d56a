import {
  Chart,
  LinearScale,
  LineController,
  LineElement,
  type Plugin,
  PointElement,
  ScatterController,
  Tooltip,
} from 'chart.js';
import type { GapChartView, GapPoint } from '../load-page-data';
import type { PagePlace } from '../page-parts';
import { axisLook, type ChartLook, tooltip } from '../parts/chart-frame';

Chart.register(ScatterController, LineController, LineElement, PointElement, LinearScale, Tooltip);

/** Points of nearly one gap are put over each other by so much, so that each can be seen. */
const lift = 0.035;
/** Gaps in one of these steps share a pile. */
const pileHours = 3;
const highestPile = 8;

/** Where a point is drawn: still sore at the top going down, not sore at the bottom going up. */
export function pilePositions(
  points: readonly GapPoint[],
): readonly { readonly x: number; readonly y: number }[] {
  const piles = new Map<string, number>();
  return points.map(({ hours, sore }) => {
    const key = `${sore} ${Math.round(hours / pileHours)}`;
    const height = piles.get(key) ?? 0;
    piles.set(key, height + 1);
    const shift = (height % highestPile) * lift;
    return { x: hours, y: sore ? 1 - shift : shift };
  });
}

function curve(view: GapChartView, { colours }: ChartLook): Plugin {
  return {
    id: 'curve',
    beforeDatasetsDraw(chart) {
      const { ctx, chartArea, scales } = chart;
      const { x, y } = scales;
      if (!x || !y) return;
      const upright = (hours: number, colour: string, dash: number[]): void => {
        const at = x.getPixelForValue(hours);
        if (at < chartArea.left || at > chartArea.right) return;
        ctx.strokeStyle = colour;
        ctx.setLineDash(dash);
        ctx.beginPath();
        ctx.moveTo(at, chartArea.top);
        ctx.lineTo(at, chartArea.bottom);
        ctx.stroke();
      };
      ctx.save();
      ctx.lineWidth = 1.5;
      if (view.learned) {
        const { lower, upper, at } = view.learned;
        const [left, right] = [lower, upper].map((hours) =>
          Math.min(chartArea.right, Math.max(chartArea.left, x.getPixelForValue(hours))),
        );
        ctx.globalAlpha = 0.13;
        ctx.fillStyle = colours.target;
        ctx.fillRect(left ?? 0, chartArea.top, (right ?? 0) - (left ?? 0), chartArea.bottom - chartArea.top);
        ctx.globalAlpha = 1;
        upright(at, colours.target, []);
      }
      if (view.current) upright(view.current.at, colours.text, [6, 4]);
      ctx.strokeStyle = colours.text;
      ctx.setLineDash([2, 3]);
      ctx.beginPath();
      ctx.moveTo(chartArea.left, y.getPixelForValue(view.accepted.at));
      ctx.lineTo(chartArea.right, y.getPixelForValue(view.accepted.at));
      ctx.stroke();
      if (view.curve.length > 0) {
        const at = view.curve.map(({ hours }) => x.getPixelForValue(hours));
        ctx.setLineDash([]);
        ctx.fillStyle = colours.left;
        ctx.globalAlpha = 0.2;
        ctx.beginPath();
        for (const [index, { upper }] of view.curve.entries())
          ctx.lineTo(at[index] ?? 0, y.getPixelForValue(upper));
        for (let index = view.curve.length - 1; index >= 0; index -= 1)
          ctx.lineTo(at[index] ?? 0, y.getPixelForValue(view.curve[index]?.lower ?? 0));
        ctx.fill();
        ctx.globalAlpha = 1;
        ctx.strokeStyle = colours.left;
        ctx.lineWidth = 2.5;
        ctx.beginPath();
        for (const [index, { chance }] of view.curve.entries())
          ctx.lineTo(at[index] ?? 0, y.getPixelForValue(chance));
        ctx.stroke();
      }
      ctx.restore();
    },
  };
}

/**
 * Draws each pair of sessions at its gap, still sore at the top and not sore at the bottom, with the fitted chance and
 * its interval between them.
 * @param open Called with the place behind a point that was clicked.
 */
export function drawGaps(
  canvas: HTMLCanvasElement,
  view: GapChartView,
  look: ChartLook,
  open: (place: PagePlace) => void,
): Chart {
  const { colours, locale } = look;
  const plain = axisLook(look);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  const hours = [...view.points.map((point) => point.hours), view.current?.at ?? 0];
  const positions = pilePositions(view.points);
  const groups = [true, false].map((sore) =>
    view.points.flatMap((point, index) => (point.sore === sore ? [{ point, at: positions[index] }] : [])),
  );
  const pointAt = (group: number | undefined, index: number | undefined) =>
    groups[group ?? -1]?.[index ?? -1]?.point;
  return new Chart(canvas, {
    type: 'scatter',
    data: {
      datasets: groups.map((group, index) => ({
        data: group.map(({ at }) => ({ x: at?.x ?? 0, y: at?.y ?? 0 })),
        pointStyle: index === 0 ? 'triangle' : 'circle',
        pointBackgroundColor: index === 0 ? colours.right : 'transparent',
        pointBorderColor: index === 0 ? colours.right : colours.text,
        pointRadius: 4.5,
        pointHoverRadius: 6,
        clip: 8,
      })),
    },
    plugins: [curve(view, look)],
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      layout: { padding: { top: 10, right: 10 } },
      interaction: { mode: 'nearest', intersect: true },
      scales: {
        x: {
          ...plain,
          type: 'linear',
          min: 0,
          suggestedMax: Math.max(48, ...hours) * 1.05,
          ticks: { ...plain.ticks, stepSize: 24, maxRotation: 0, callback: (value) => `${value} h` },
        },
        y: {
          ...plain,
          type: 'linear',
          min: 0,
          max: 1,
          ticks: { ...plain.ticks, stepSize: 0.2, callback: (value) => percent.format(Number(value)) },
        },
      },
      plugins: { tooltip: tooltip(look, (group, index) => pointAt(group, index)?.text ?? '') },
      onHover: (_event, elements) => {
        canvas.classList.toggle('over-point', elements.length > 0);
      },
      onClick: (_event, elements) => {
        const place = pointAt(elements[0]?.datasetIndex, elements[0]?.index)?.place;
        if (place) open(place);
      },
    },
  });
}
