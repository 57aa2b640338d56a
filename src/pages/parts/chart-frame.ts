import type { ChartConfiguration } from 'chart.js';
import { dayTicks, tickLabels } from './day-ticks';
import type { ThemeColours } from './theme';

/** Pixels that the name of a day needs on an axis. */
const tickWidth = 64;

/** What every chart is drawn with. */
export interface ChartLook {
  readonly colours: ThemeColours;
  readonly locale: string;
}

/** The colours and letters of an axis. */
export function axisLook({ colours }: ChartLook) {
  return {
    border: { color: colours.grid },
    grid: { color: colours.grid },
    ticks: { color: colours.text, font: { family: colours.font, size: 12 } },
  } as const;
}

/** An axis of days from `first` to `last`, marked on Mondays or first days of months. */
export function dayAxis(first: number, last: number, look: ChartLook) {
  let names = new Map<number, string>();
  const plain = axisLook(look);
  return {
    ...plain,
    type: 'linear',
    min: first,
    max: last,
    // Bars would move the names of the days between the lines.
    offset: false,
    grid: { ...plain.grid, offset: false },
    ticks: {
      ...plain.ticks,
      maxRotation: 0,
      autoSkip: false,
      callback: (value: number | string) => names.get(Number(value)) ?? '',
    },
    afterBuildTicks(axis: { width: number; ticks: { value: number }[] }) {
      const ticks = dayTicks(first, last, Math.max(2, Math.floor(axis.width / tickWidth)));
      const labels = tickLabels(ticks, look.locale);
      names = new Map(ticks.days.map((day, index) => [day, labels[index] ?? '']));
      axis.ticks = ticks.days.map((value) => ({ value }));
    },
  } as const;
}

/** The words that come up over a point, in the editor's colours. */
export function tooltip(
  { colours }: ChartLook,
  textAt: (dataset: number, index: number) => string,
): NonNullable<NonNullable<NonNullable<ChartConfiguration['options']>['plugins']>['tooltip']> {
  return {
    displayColors: false,
    backgroundColor: colours.background,
    borderColor: colours.text,
    borderWidth: 1,
    bodyColor: colours.text,
    bodyFont: { family: colours.font, size: 12 },
    callbacks: {
      title: () => '',
      label: (item) => textAt(item.datasetIndex, item.dataIndex),
    },
  };
}
