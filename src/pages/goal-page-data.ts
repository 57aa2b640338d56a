import type { ChartLine, CommonTexts, FromAnyPage, PagePlace, TableRow, TableView } from './page-parts';

export type { ChartLine, PagePlace, TableView } from './page-parts';

/** A point of a chart: days since 1970-01-01 from left to right, and what it says in words. */
export interface ChartPoint {
  readonly day: number;
  readonly value: number;
  readonly text: string;
  readonly place: PagePlace;
}

/** Which readings: of which side, in which state. */
export interface SeriesKey {
  readonly side: 'left' | 'right' | 'none';
  readonly condition: 'warm' | 'cold' | 'none';
}

/** A range of values on one day. */
export interface BandDay {
  readonly day: number;
  readonly lower: number;
  readonly upper: number;
}

/** The line through the readings of a series, and how sure it is. */
export interface TrendView {
  /** Its ends: the first and the latest reading. */
  readonly line: readonly [
    { readonly day: number; readonly value: number },
    { readonly day: number; readonly value: number },
  ];
  /** Where the line may run, by the interval of its slope. */
  readonly band?: readonly BandDay[];
  /** Where it leads from the latest reading on: no further ahead than the readings reach back, nor past the target. */
  readonly fan?: readonly BandDay[];
}

/** The readings of one side in one state. */
export interface SeriesView extends SeriesKey {
  readonly name: string;
  /** Whether it is of the state that the metric is judged by. */
  readonly isMain: boolean;
  /** One point a day: the mean of its readings. */
  readonly days: readonly ChartPoint[];
  /** The single readings of days that have several. */
  readonly repeats: readonly ChartPoint[];
  /** Readings of this side in another state, such as cold among warm ones: no line may join them with these. */
  readonly others: readonly ChartPoint[];
  /** What those are called. */
  readonly othersName?: string;
  readonly trend?: TrendView;
  /** Within so much of the line lie 95 % of single readings that differ from it by measuring error alone. */
  readonly noise: { readonly reach: number; readonly label: string };
}

/** A step that stands at a date and a value. */
export interface StepMark extends ChartPoint {
  readonly isDone: boolean;
}

/** The sessions done in one week. */
export interface WeekBar {
  readonly monday: number;
  readonly done: number;
  readonly text: string;
  /** Effort x minutes of those that say both. */
  readonly load: number;
  /** Some do not say both: the load is a lower bound. */
  readonly loadIsLeast: boolean;
  readonly loadText: string;
}

/** What a chart draws; its own words say the same to those who do not see it. */
export interface ChartView {
  readonly label: string;
  /** First and last day that it shows. */
  readonly first: number;
  readonly last: number;
  /** What stands behind a number on the axis: ` cm`, `°`. */
  readonly unit: string;
  readonly series: readonly SeriesView[];
  readonly steps: readonly StepMark[];
  readonly target?: ChartLine;
  readonly goalDate?: ChartLine;
  readonly today: ChartLine;
  readonly weeks: readonly WeekBar[];
}

/** A table of readings: each row knows which series it belongs to. */
export interface ReadingsView extends Omit<TableView, 'rows'> {
  readonly rows: readonly (TableRow & { readonly of: SeriesKey })[];
}

/** The figures of a metric: a column a series. */
export interface FiguresView {
  readonly caption: string;
  /** Head of the column that names the figures. */
  readonly corner: string;
  readonly columns: readonly { readonly of: SeriesKey; readonly label: string }[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

/** A choice of sides or states, when there is more than one. */
export interface FilterView<Key extends string> {
  readonly label: string;
  readonly options: readonly { readonly key: Key; readonly label: string }[];
}

/** One metric of a goal. */
export interface MetricView {
  readonly name: string;
  /** Whether and when the target is reached: one sentence for each side. */
  readonly verdicts: readonly string[];
  /** Where it stands, in sentences. */
  readonly sentences: readonly string[];
  /** Why there is no chart yet, or why it says little. */
  readonly notice?: string;
  readonly chart?: ChartView;
  readonly figures?: FiguresView;
  readonly table?: ReadingsView;
  readonly sides?: FilterView<SeriesKey['side'] | 'all'>;
  readonly conditions?: FilterView<SeriesKey['condition']>;
}

/** A step in words. */
export interface StepView {
  readonly state: 'done' | 'reached' | 'overdue' | 'open';
  readonly name: string;
  readonly text: string;
  readonly place: PagePlace;
}

/** One goal. */
export interface GoalView {
  readonly id: string;
  readonly title: string;
  /** Date and what is left, in sentences. */
  readonly sentences: readonly string[];
  /** What is missing, with the line to write. */
  readonly notices: readonly string[];
  /** Whether there is a private reason; its words come only when they are asked for. */
  readonly hasWhy: boolean;
  readonly metrics: readonly MetricView[];
  readonly steps: readonly StepView[];
  readonly sessions?: TableView;
  readonly place: PagePlace;
}

/** Words of the page itself, in the person's language. */
export interface PageTexts extends CommonTexts {
  readonly goal: string;
  readonly allGoals: string;
  readonly showWhy: string;
  readonly hideWhy: string;
  readonly copy: string;
  readonly openGoal: string;
  readonly steps: string;
  readonly repeat: string;
  readonly target: string;
  readonly openStep: string;
  readonly doneStep: string;
  readonly sessions: string;
  readonly loads: string;
  /** A load that is a lower bound. */
  readonly leastLoads: string;
  readonly line: string;
  readonly band: string;
  readonly fan: string;
}

/** All that the goal page shows, ready to be shown: the page adds no words of its own. */
export interface GoalPageData {
  /** The journal's id, kept by the page so that it finds its way back after a reload. */
  readonly journal: string;
  readonly title: string;
  /** BCP 47 tag that dates and numbers on the axes are written in. */
  readonly locale: string;
  readonly choices: readonly { readonly goal: string; readonly label: string }[];
  /** The id of the goal that is shown; empty for all. */
  readonly chosen: string;
  readonly goals: readonly GoalView[];
  /** Why there is nothing to show. */
  readonly notice?: string;
  readonly texts: PageTexts;
}

/** The sides and the state that are shown of a metric. */
export interface FilterState {
  readonly side: SeriesKey['side'] | 'all';
  readonly condition: SeriesKey['condition'];
}

/** What the page keeps when it is hidden or the editor is loaded again. Never anything private. */
export interface GoalPageState {
  readonly journal: string;
  readonly goal: string;
  /** Tables that were closed, by a key of their own. */
  readonly closed?: readonly string[];
  /** What was chosen for each metric, by the key of its section. */
  readonly filters?: Readonly<Record<string, Partial<FilterState>>>;
  readonly scroll?: number;
}

/** What the page is told. */
export type ToGoalPage =
  | { readonly type: 'data'; readonly data: GoalPageData }
  | { readonly type: 'why'; readonly goal: string; readonly words: readonly string[] };

/** What the page asks for. */
export type FromGoalPage =
  | FromAnyPage
  | { readonly type: 'choose'; readonly goal: string }
  | { readonly type: 'why'; readonly goal: string }
  | { readonly type: 'copy'; readonly goal: string };
