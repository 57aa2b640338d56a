import type {
  ChartView,
  FiguresView,
  FilterState,
  MetricView,
  ReadingsView,
  SeriesKey,
} from '../goal-page-data';
import type { TableView } from '../page-parts';

/** What is shown of a metric: what was chosen, where that can still be chosen, else all sides in the main state. */
export function filterOf(metric: MetricView, chosen: Partial<FilterState> | undefined): FilterState {
  const main = metric.chart?.series.find((series) => series.isMain)?.condition ?? 'none';
  const has = <Key extends string>(
    filter: { readonly options: readonly { readonly key: Key }[] } | undefined,
    key: Key | undefined,
  ): key is Key => filter?.options.some((option) => option.key === key) ?? false;
  return {
    side: has(metric.sides, chosen?.side) ? chosen.side : 'all',
    condition: has(metric.conditions, chosen?.condition) ? chosen.condition : main,
  };
}

function isShown(of: SeriesKey, { side, condition }: FilterState): boolean {
  return of.condition === condition && (side === 'all' || of.side === side);
}

/** The chart with the series that are shown. */
export function filteredChart(chart: ChartView, filter: FilterState): ChartView {
  return { ...chart, series: chart.series.filter((series) => isShown(series, filter)) };
}

/** The readings of the chosen side, in every state: the table says which. */
export function filteredReadings(table: ReadingsView, filter: FilterState): TableView {
  return {
    ...table,
    rows: table.rows.filter(({ of }) => filter.side === 'all' || of.side === filter.side),
  };
}

/** The figures of the series that are shown, a column each. */
export function filteredFigures(figures: FiguresView, filter: FilterState): TableView {
  const shown = figures.columns.map(({ of }) => isShown(of, filter));
  const only = <Item>(items: readonly Item[]): readonly Item[] => items.filter((_, index) => shown[index]);
  return {
    caption: figures.caption,
    head: [figures.corner, ...only(figures.columns).map(({ label }) => label)],
    rows: figures.rows.map(({ name, cells }) => ({ cells: [name, ...only(cells)] })),
  };
}
