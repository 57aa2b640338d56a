import { BarController, BarElement, Chart, LinearScale, type Plugin, Tooltip } from 'chart.js';
import type { LoadChartView } from '../load-page-data';
import { axisLook, type ChartLook, dayAxis, tooltip } from '../parts/chart-frame';
import { partColour, partFill } from './patterns';

Chart.register(BarController, BarElement, LinearScale, Tooltip);

/** Writes each week's total over its bar; upright where the bars stand too close for it. */
function totals(view: LoadChartView, { colours }: ChartLook): Plugin {
  return {
    id: 'totals',
    afterDatasetsDraw(chart) {
      const { ctx, scales } = chart;
      const { x, y } = scales;
      if (!x || !y) return;
      ctx.save();
      ctx.font = `11px ${colours.font}`;
      ctx.fillStyle = colours.text;
      const widest = Math.max(...view.weeks.map(({ total }) => ctx.measureText(total).width));
      const isNarrow = x.getPixelForValue(7) - x.getPixelForValue(0) < widest + 6;
      for (const { monday, parts, total } of view.weeks) {
        const sum = parts.reduce((all, part) => all + part, 0);
        ctx.save();
        ctx.translate(x.getPixelForValue(monday + 3), y.getPixelForValue(sum) - 4);
        if (isNarrow) ctx.rotate(-Math.PI / 2);
        ctx.textAlign = isNarrow ? 'left' : 'center';
        ctx.textBaseline = isNarrow ? 'middle' : 'bottom';
        ctx.fillText(total, 0, 0);
        ctx.restore();
      }
      ctx.restore();
    },
  };
}

/** Draws the load of weeks, stacked by kind, with the total over each. */
export function drawLoads(canvas: HTMLCanvasElement, view: LoadChartView, look: ChartLook): Chart {
  const { colours, locale } = look;
  const first = view.weeks[0]?.monday ?? 0;
  const last = (view.weeks.at(-1)?.monday ?? 0) + 6;
  const numbers = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  const most = Math.max(1, ...view.weeks.map(({ parts }) => parts.reduce((sum, part) => sum + part, 0)));
  const plain = axisLook(look);
  return new Chart(canvas, {
    type: 'bar',
    data: {
      datasets: view.kinds.map((_, kind) => ({
        data: view.weeks.map(({ monday, parts }) => ({ x: monday + 3, y: parts[kind] ?? 0 })),
        stack: 'week',
        backgroundColor: partFill(kind, colours),
        borderColor: partColour(kind, colours),
        borderWidth: 1,
        maxBarThickness: 34,
      })),
    },
    plugins: [totals(view, look)],
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      layout: { padding: { top: 8, right: 10 } },
      scales: {
        x: { ...dayAxis(first - 2, last + 2, look), stacked: true },
        y: {
          ...plain,
          type: 'linear',
          stacked: true,
          min: 0,
          // Room for the totals, upright ones too.
          suggestedMax: most * 1.2,
          ticks: { ...plain.ticks, maxTicksLimit: 6, callback: (value) => numbers.format(Number(value)) },
        },
      },
      plugins: {
        tooltip: tooltip(look, (kind, week) => {
          const bar = view.weeks[week];
          return `${bar?.text ?? ''}; ${view.kinds[kind] ?? ''} ${numbers.format(bar?.parts[kind] ?? 0)}`;
        }),
      },
    },
  });
}
