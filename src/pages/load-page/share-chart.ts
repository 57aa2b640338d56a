import {
  Chart,
  LinearScale,
  LineController,
  LineElement,
  type Plugin,
  PointElement,
  Tooltip,
} from 'chart.js';
import type { ShareChartView } from '../load-page-data';
import { axisLook, type ChartLook, dayAxis, tooltip } from '../parts/chart-frame';

Chart.register(LineController, LineElement, PointElement, LinearScale, Tooltip);

/** An upright line from the lower to the upper end of each interval, with a short bar at either end. */
function intervals(view: ShareChartView, { colours }: ChartLook): Plugin {
  return {
    id: 'intervals',
    beforeDatasetsDraw(chart) {
      const { ctx, scales } = chart;
      const { x, y } = scales;
      if (!x || !y) return;
      ctx.save();
      ctx.strokeStyle = colours.left;
      ctx.lineWidth = 1.5;
      for (const { monday, lower, upper } of view.weeks) {
        const at = x.getPixelForValue(monday + 3);
        const [top, bottom] = [y.getPixelForValue(upper), y.getPixelForValue(lower)];
        ctx.beginPath();
        ctx.moveTo(at, top);
        ctx.lineTo(at, bottom);
        for (const end of [top, bottom]) {
          ctx.moveTo(at - 4, end);
          ctx.lineTo(at + 4, end);
        }
        ctx.stroke();
      }
      ctx.restore();
    },
  };
}

/** Draws the share of planned sessions done in each week with its interval. No line joins them: weeks are few sessions. */
export function drawShares(canvas: HTMLCanvasElement, view: ShareChartView, look: ChartLook): Chart {
  const { colours, locale } = look;
  const plain = axisLook(look);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  const first = view.weeks[0]?.monday ?? 0;
  const last = (view.weeks.at(-1)?.monday ?? 0) + 6;
  return new Chart(canvas, {
    type: 'line',
    data: {
      datasets: [
        {
          data: view.weeks.map(({ monday, share }) => ({ x: monday + 3, y: share })),
          showLine: false,
          pointBackgroundColor: colours.left,
          pointBorderColor: colours.left,
          pointRadius: 4.5,
          pointHoverRadius: 6,
          clip: 8,
        },
      ],
    },
    plugins: [intervals(view, look)],
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      layout: { padding: { top: 10, right: 10 } },
      scales: {
        x: dayAxis(first - 2, last + 2, look),
        y: {
          ...plain,
          type: 'linear',
          min: 0,
          max: 1,
          ticks: { ...plain.ticks, stepSize: 0.25, callback: (value) => percent.format(Number(value)) },
        },
      },
      plugins: { tooltip: tooltip(look, (_dataset, index) => view.weeks[index]?.text ?? '') },
    },
  });
}
