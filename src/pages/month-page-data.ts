import type { IsoDate } from '../notation/time/iso-date';
import type { IsoMonth } from '../notation/time/iso-month';
import type { SessionMark } from '../training/month/month-facts';
import type { CommonTexts, FromAnyPage, PagePlace, TableView } from './page-parts';

/** A session of a day. */
export interface MonthSessionView {
  readonly mark: SessionMark;
  readonly kind: string;
  /** When it begins and what became of it: `18:30, kept`. */
  readonly state: string;
  readonly place: PagePlace;
}

/** A day of the grid. */
export interface MonthDayView {
  readonly date: IsoDate;
  /** What stands in the day's corner: `24`, or `Mar 1` in a neighbouring month. */
  readonly number: string;
  /** The whole date, and that it is today. */
  readonly label: string;
  readonly isInMonth: boolean;
  readonly isToday: boolean;
  /** The start of its first note. */
  readonly note?: PagePlace;
  /** Busy, rest, and the names of events. */
  readonly words: readonly string[];
  readonly sessions: readonly MonthSessionView[];
}

/** A row of the grid. */
export interface MonthWeekView {
  readonly label: string;
  readonly facts: string;
  readonly days: readonly MonthDayView[];
}

/** Another month to turn to. */
export interface MonthLink {
  readonly month: IsoMonth;
  readonly name: string;
}

/** Words of the page itself. */
export interface MonthPageTexts extends CommonTexts {
  readonly thisMonth: string;
  readonly today: string;
  readonly print: string;
  readonly grid: string;
  readonly keys: string;
  readonly week: string;
  readonly noNote: string;
}

/** All that the page of a month shows: it adds no words of its own. */
export interface MonthPageData {
  readonly journal: string;
  /** Of the panel. */
  readonly title: string;
  readonly locale: string;
  readonly month: IsoMonth;
  readonly isThisMonth: boolean;
  readonly today: IsoDate;
  readonly heading: string;
  readonly previous: MonthLink;
  readonly next: MonthLink;
  readonly weekdays: readonly { readonly short: string; readonly long: string }[];
  readonly weeks: readonly MonthWeekView[];
  readonly sentences: readonly string[];
  readonly table: TableView;
  readonly legend: readonly { readonly mark: SessionMark; readonly words: string }[];
  readonly texts: MonthPageTexts;
}

/** What the page keeps when it is hidden or the editor is loaded again. */
export interface MonthPageState {
  readonly journal: string;
  /** Left out while it shows the month of today, so that it goes along with the calendar. */
  readonly month?: string;
  /** The day that the keyboard stands on. */
  readonly day?: string;
  readonly isTableClosed?: boolean;
  readonly scroll?: number;
}

/** What the page is told. */
export type ToMonthPage = { readonly type: 'data'; readonly data: MonthPageData };

/** What the page asks for; without a month it asks for the one of today. */
export type FromMonthPage =
  | FromAnyPage
  | { readonly type: 'month'; readonly month?: IsoMonth }
  | { readonly type: 'print' };
