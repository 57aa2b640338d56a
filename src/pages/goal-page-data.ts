/** Characters of a note of the page's journal. */
export interface PagePlace {
  readonly note: string;
  readonly range: { readonly start: number; readonly end: number };
}

/** A point of a chart: days since 1970-01-01 from left to right, and what it says in words. */
export interface ChartPoint {
  readonly day: number;
  readonly value: number;
  readonly text: string;
  readonly place: PagePlace;
}

/** The readings of one side, or those without a side. */
export interface SeriesView {
  readonly side: 'left' | 'right' | 'none';
  readonly name: string;
  /** One point a day: the mean of its readings. */
  readonly days: readonly ChartPoint[];
  /** The single readings of days that have several. */
  readonly repeats: readonly ChartPoint[];
  /** Readings in another state, such as cold among warm ones: no line may join them with the others. */
  readonly others: readonly ChartPoint[];
}

/** A step that stands at a date and a value. */
export interface StepMark extends ChartPoint {
  readonly isDone: boolean;
}

/** A line across a chart, and its name. */
export interface ChartLine {
  readonly at: number;
  readonly label: string;
}

/** The sessions done in one week. */
export interface WeekBar {
  readonly monday: number;
  readonly done: number;
  readonly text: string;
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
  /** What the readings in another state are called, when there are any. */
  readonly others?: string;
  readonly steps: readonly StepMark[];
  readonly target?: ChartLine;
  readonly goalDate?: ChartLine;
  readonly today: ChartLine;
  readonly weeks: readonly WeekBar[];
}

/** A table whose first cell of each row leads to a place when there is one. */
export interface TableView {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly place?: PagePlace }[];
}

/** One metric of a goal. */
export interface MetricView {
  readonly name: string;
  /** Where it stands, in sentences. */
  readonly sentences: readonly string[];
  /** Why there is no chart yet, or why it says little. */
  readonly notice?: string;
  readonly chart?: ChartView;
  readonly table?: TableView;
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
export interface PageTexts {
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
  readonly openReading: string;
  readonly caution: string;
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

/** What the page keeps when it is hidden or the editor is loaded again. Never anything private. */
export interface GoalPageState {
  readonly journal: string;
  readonly goal: string;
  /** Tables that were closed, by a key of their own. */
  readonly closed?: readonly string[];
  readonly scroll?: number;
}

/** What the page is told. */
export type ToGoalPage =
  | { readonly type: 'data'; readonly data: GoalPageData }
  | { readonly type: 'why'; readonly goal: string; readonly words: readonly string[] };

/** What the page asks for. */
export type FromGoalPage =
  | { readonly type: 'ready' }
  | { readonly type: 'choose'; readonly goal: string }
  | { readonly type: 'open'; readonly place: PagePlace }
  | { readonly type: 'why'; readonly goal: string }
  | { readonly type: 'copy'; readonly goal: string };
