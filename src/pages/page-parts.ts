/** Characters of a note of the page's journal. */
export interface PagePlace {
  readonly note: string;
  readonly range: { readonly start: number; readonly end: number };
}

/** A row of a table; its first cell leads to a place when there is one. */
export interface TableRow {
  readonly cells: readonly string[];
  readonly place?: PagePlace;
}

/** A table. The first cell of each row names it. */
export interface TableView {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly TableRow[];
}

/** A line across a chart, and its name. */
export interface ChartLine {
  readonly at: number;
  readonly label: string;
}

/** Words that every page needs, in the person's language. */
export interface CommonTexts {
  readonly openReading: string;
  /** Opens the guide's page about the figures. */
  readonly guide: string;
  readonly caution: string;
}

/** What every page may ask for. */
export type FromAnyPage =
  | { readonly type: 'ready' }
  | { readonly type: 'open'; readonly place: PagePlace }
  | { readonly type: 'guide' };
