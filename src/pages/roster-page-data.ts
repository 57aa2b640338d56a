import type { Severity } from '../training/finding';
import type { WordReasonKind } from '../training/roster/word-reasons';
import type { CommonTexts, PagePlace } from './page-parts';

/** How an athlete's state is drawn: by the gravest reason for a word, or that there is none. */
export type RosterMark = WordReasonKind | 'fine';

/** Words, and the place that they lead to. */
export interface RosterLink {
  readonly words: string;
  readonly place?: PagePlace;
}

/** A goal that is behind; it leads to its page. */
export interface RosterGoal {
  readonly goal: string;
  readonly words: string;
}

/** A row of the roster. */
export interface RosterRowView {
  /** Id of the athlete's journal. */
  readonly journal: string;
  /** Leads to the last note, or to the journal's own. */
  readonly name: RosterLink;
  /** Empty when nothing asks for a word. */
  readonly reasons: readonly (RosterLink & { readonly mark: WordReasonKind })[];
  readonly lastLog: RosterLink;
  readonly week: { readonly done: number; readonly planned: number; readonly words: string };
  /** Those of which there are any, the gravest first; each leads to the first of them. */
  readonly findings: readonly (RosterLink & { readonly severity: Severity })[];
  readonly slipping: RosterLink;
  readonly pains: readonly RosterLink[];
  readonly next: RosterLink;
  readonly goalsBehind: readonly RosterGoal[];
  /** What a screen reader says of the button for a comment. */
  readonly commentLabel: string;
}

/** What a coach can do for athletes from the page. */
export const rosterActs = ['lay', 'copy', 'comment'] as const;

export type RosterAct = (typeof rosterActs)[number];

/** Words of the page itself. */
export interface RosterPageTexts extends CommonTexts {
  /** Those that are offered. */
  readonly acts: Readonly<Partial<Record<RosterAct, string>>>;
  readonly table: string;
  /** Heads of the columns, in order. */
  readonly head: readonly string[];
  readonly fine: string;
  readonly none: string;
  readonly comment: string;
  readonly keys: string;
  readonly empty: string;
}

/** All that the page of the roster shows: it adds no words of its own. */
export interface RosterPageData {
  /** Of the panel. */
  readonly title: string;
  readonly locale: string;
  /** How many athletes there are, and how many of them need a word. */
  readonly sentences: readonly string[];
  /** Those who need a word first. */
  readonly rows: readonly RosterRowView[];
  readonly texts: RosterPageTexts;
}

/** What the page keeps when it is hidden or the editor is loaded again. */
export interface RosterPageState {
  readonly scroll?: number;
}

/** What the page is told. */
export type ToRosterPage = { readonly type: 'data'; readonly data: RosterPageData };

/** What the page asks for. */
export type FromRosterPage =
  | { readonly type: 'ready' }
  | { readonly type: 'guide' }
  | { readonly type: 'openIn'; readonly journal: string; readonly place: PagePlace }
  | { readonly type: 'goal'; readonly journal: string; readonly goal: string }
  /** For the athlete named, or for those whom the person then chooses. */
  | { readonly type: 'act'; readonly act: RosterAct; readonly journal?: string };
