import type * as vscode from 'vscode';
import type { Journal } from '../journal/journal';
import type { Note, NotePath } from '../journal/note';
import type { DayNumber, IsoDate } from '../notation/time/iso-date';
import type { WallMinutes } from '../notation/time/wall-clock';
import type { TimeOfDay } from '../planning/week-problem/places';
import type { ReviewDay } from '../planning/week-review/review-due';

/** Settings of one journal, read once and validated; a change makes a new value. */
export interface JournalSettings {
  /** A fixed day for `today`, or `undefined` for the clock's. */
  readonly today?: IsoDate;
  /** Time zone from the settings; the journal's own `#zone` comes before it, the machine's after. */
  readonly timeZone?: string;
  /** Minutes before a session at which an exported calendar reminds of it; not at all when left out. */
  readonly alarmMinutes?: number;
  /** The time at which an exported calendar reminds of the look back; not at all when left out. */
  readonly calendarReviewAt?: WallMinutes;
  /** The chance of "still sore" that the athlete accepts, inside 0..1. */
  readonly recoveryChance: number;
  readonly review: {
    /** Whether the private parts stand in a week's review; only where it was asked for by name. */
    readonly pain: boolean;
    readonly why: boolean;
    /** The day of the look back, or `off` for no reminder. */
    readonly day: ReviewDay;
  };
  /** Whether lines above sessions say the time since the last of their kind. */
  readonly sessionLenses: boolean;
  /** Whether sessions are liked best early or late in their hours. */
  readonly timeOfDay: TimeOfDay;
  readonly findings: { readonly enabled: boolean; readonly weeksBefore: number; readonly weeksAfter: number };
}

/** A journal of the workspace, as the features of the editor see it. */
export interface OpenJournal {
  /** Stable as long as the journal stands: the address of its folder. */
  readonly id: string;
  /** The journal's folder. */
  readonly uri: vscode.Uri;
  /** The athlete's name, or the folder's. */
  readonly title: string;
  readonly journal: Journal;
  readonly settings: JournalSettings;
  /** The day it is for the athlete, asked for anew at each use. */
  today(): IsoDate;
  /** tzdb name of the zone that counts hours in this journal. */
  zone(): string;
  uriOf(note: NotePath): vscode.Uri;
}

/** What features are told when a journal changed, appeared or went. */
export interface OpenJournalChange {
  readonly journal: OpenJournal;
  readonly kind: 'added' | 'changed' | 'removed';
  /** Notes that were added, changed or removed. */
  readonly notes: ReadonlySet<NotePath>;
  /** Days whose sessions or readings changed; every day may read differently when `everything` is set. */
  readonly days: ReadonlySet<DayNumber>;
  /** A goal, need, rule or setting changed. */
  readonly everything: boolean;
}

/** All journals of the workspace, kept up to date. */
export interface OpenJournals {
  /** Resolves when the first reading is complete. */
  readonly ready: Promise<void>;
  all(): readonly OpenJournal[];
  byId(id: string): OpenJournal | undefined;
  /** The journal whose folder holds `uri`, and the note when it is read. */
  find(
    uri: vscode.Uri,
  ): { readonly journal: OpenJournal; readonly path: NotePath; readonly note?: Note } | undefined;
  /**
   * The note of an open document, read again when the document is newer than the index.
   * `undefined` outside of every journal.
   */
  noteOf(document: vscode.TextDocument): { readonly journal: OpenJournal; readonly note: Note } | undefined;
  /** Fires when journals appear, go, or change; coalesced, never in the middle of a load. */
  readonly onDidChange: vscode.Event<readonly OpenJournalChange[]>;
}
