import type { ChartLine, CommonTexts, FromAnyPage, PagePlace, TableView } from './page-parts';

/** The load of one week: a part a kind, from the bottom up. */
export interface LoadBar {
  readonly monday: number;
  /** One a kind of the chart, in its order. */
  readonly parts: readonly number[];
  /** The total as it stands over the bar: `1,620`, `420+` where a session is unknown. */
  readonly total: string;
  readonly text: string;
}

/** The loads of weeks, stacked by kind. */
export interface LoadChartView {
  readonly label: string;
  readonly kinds: readonly string[];
  readonly weeks: readonly LoadBar[];
}

/** Two consecutive sessions: how long the gap was, and whether it was still sore. */
export interface GapPoint {
  readonly hours: number;
  readonly sore: boolean;
  readonly text: string;
  readonly place: PagePlace;
}

/** A chance of 0..1 with its interval at a gap. */
export interface CurvePoint {
  readonly hours: number;
  readonly chance: number;
  readonly lower: number;
  readonly upper: number;
}

/** Gaps against soreness. */
export interface GapChartView {
  readonly label: string;
  readonly points: readonly GapPoint[];
  /** Only as far as gaps were seen. */
  readonly curve: readonly CurvePoint[];
  /** The chance that is accepted. */
  readonly accepted: ChartLine;
  /** The gap at which the curve falls to it, with its interval. */
  readonly learned?: ChartLine & { readonly lower: number; readonly upper: number };
  /** The gap that is kept now. */
  readonly current?: ChartLine;
}

/** What the notes say about the recovery of a kind or a region. */
export interface RecoveryView {
  readonly key: string;
  readonly name: string;
  readonly sentences: readonly string[];
  readonly suggestion?: string;
  readonly chart?: GapChartView;
  readonly evidence?: TableView;
}

/** The share of planned sessions done in a week, 0..1, with its interval. */
export interface ShareBar {
  readonly monday: number;
  readonly share: number;
  readonly lower: number;
  readonly upper: number;
  readonly text: string;
}

/** Shares by week. */
export interface ShareChartView {
  readonly label: string;
  readonly weeks: readonly ShareBar[];
}

/** A part of the page: sentences, and tables that say the same as its chart. */
export interface PartView {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly notice?: string;
  /** The first stands open, the others closed. */
  readonly tables: readonly TableView[];
}

/** Words of the page itself. */
export interface LoadPageTexts extends CommonTexts {
  readonly subject: string;
  readonly sore: string;
  readonly ready: string;
  readonly curve: string;
  readonly curveBand: string;
  readonly learned: string;
  readonly current: string;
  readonly accepted: string;
  readonly share: string;
  readonly interval: string;
}

/** All that the page about load and recovery shows: it adds no words of its own. */
export interface LoadPageData {
  readonly journal: string;
  readonly title: string;
  readonly locale: string;
  readonly load: PartView & {
    readonly chart?: LoadChartView;
    /** Published objections to the ratio among the sentences, behind a disclosure. */
    readonly criticism?: { readonly title: string; readonly sentences: readonly string[] };
  };
  readonly recovery: PartView & { readonly subjects: readonly RecoveryView[] };
  readonly adherence: PartView & { readonly chart?: ShareChartView };
  readonly texts: LoadPageTexts;
}

/** What the page keeps when it is hidden or the editor is loaded again. */
export interface LoadPageState {
  readonly journal: string;
  readonly subject?: string;
  /** Tables whose fold differs from how they begin, by a key of their own. */
  readonly turned?: readonly string[];
  readonly scroll?: number;
}

/** What the page is told. */
export type ToLoadPage = { readonly type: 'data'; readonly data: LoadPageData };

/** What the page asks for. */
export type FromLoadPage = FromAnyPage;
