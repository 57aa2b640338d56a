import type { Chart, Plugin } from 'chart.js';
import type { ChartLine, ChartView } from '../goal-page-data';
import type { ThemeColours } from '../parts/theme';

/** Room between a line and its name, in pixels. */
const gap = 4;

/** Pixels that a line of words is high. */
const rowHeight = 14;

function horizontal(chart: Chart, line: ChartLine, colours: ThemeColours): void {
  const { ctx, chartArea, scales } = chart;
  const y = scales.y?.getPixelForValue(line.at);
  if (y === undefined) return;
  ctx.strokeStyle = colours.target;
  ctx.setLineDash([2, 3]);
  ctx.beginPath();
  ctx.moveTo(chartArea.left, y);
  ctx.lineTo(chartArea.right, y);
  ctx.stroke();
  // Below the line where there is no room above it.
  const top = y - chartArea.top < rowHeight + gap ? y + gap : y - gap - rowHeight;
  // No line of the grid may run through the words.
  ctx.fillStyle = colours.background;
  ctx.fillRect(chartArea.left + 1, top, ctx.measureText(line.label).width + 2 * gap, rowHeight);
  ctx.fillStyle = colours.target;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  ctx.fillText(line.label, chartArea.left + gap, top + rowHeight / 2);
}

function vertical(chart: Chart, line: ChartLine, colours: ThemeColours, row: number, dash: number[]): void {
  const { ctx, chartArea, scales } = chart;
  const x = scales.x?.getPixelForValue(line.at);
  if (x === undefined || x < chartArea.left - 1 || x > chartArea.right + 1) return;
  ctx.strokeStyle = colours.text;
  ctx.setLineDash(dash);
  ctx.beginPath();
  ctx.moveTo(x, chartArea.top - row * rowHeight);
  ctx.lineTo(x, chartArea.bottom);
  ctx.stroke();
  ctx.fillStyle = colours.text;
  const width = ctx.measureText(line.label).width;
  const left = Math.min(Math.max(x - width / 2, 0), chart.width - width);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'bottom';
  ctx.fillText(line.label, left, chartArea.top - row * rowHeight - 2);
}

/**
 * Draws the target, the day of the goal and today over a chart, each with its name. Where the names of the two days
 * would touch, one stands above the other; the chart keeps room for two rows above itself.
 */
export function chartMarks(view: ChartView, colours: ThemeColours): Plugin {
  return {
    id: 'chart-marks',
    afterDatasetsDraw(chart) {
      const { ctx, scales } = chart;
      ctx.save();
      ctx.lineWidth = 1;
      ctx.font = `12px ${colours.font}`;
      if (view.target) horizontal(chart, view.target, colours);
      vertical(chart, view.today, colours, 0, []);
      if (view.goalDate) {
        const distance = Math.abs(
          (scales.x?.getPixelForValue(view.goalDate.at) ?? 0) -
            (scales.x?.getPixelForValue(view.today.at) ?? 0),
        );
        const wide =
          (ctx.measureText(view.goalDate.label).width + ctx.measureText(view.today.label).width) / 2 + 12;
        vertical(chart, view.goalDate, colours, distance < wide ? 1 : 0, [6, 4]);
      }
      ctx.restore();
    },
  };
}
