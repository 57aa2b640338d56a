import type {
  BlockRow,
  DateRange,
  EntryOf,
  MeasureEntry,
  PainEntry,
  PerWeek,
  Rating,
  SessionEntry,
  Side,
  SoreEntry,
  Weekday,
  WinEntry,
} from '../notation/entries';
import type { Quantity } from '../notation/quantity';
import type { Located } from '../notation/source-range';
import type { DayNumber, IsoDate } from '../notation/time/iso-date';
import type { LengthOfTime } from '../notation/time/length-of-time';
import type { TimeSpan } from '../notation/time/wall-clock';
import type { CalendarFile } from './calendar-file';
import type { JournalFile, Note, NotePath } from './note';

/** A session that stands in a day note, or that was moved to this day and not written there yet. */
export interface Session {
  readonly note: NotePath;
  readonly entry: SessionEntry;
  /** The day on which it stands. */
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly kind: string;
  /** The day of the note that says `moved:` to this one, when no session of that kind is written here. */
  readonly movedFrom?: IsoDate;
}

/** The same session written in several notes of a day; `kept` is the one that counts. */
export interface DuplicateSession {
  readonly kept: Session;
  readonly copies: readonly Session[];
}

/** One reading of a metric. */
export interface Measurement {
  readonly note: NotePath;
  readonly entry: MeasureEntry;
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly goal: string;
  /** As written, or the goal's only metric when the name was left out; `undefined` when it cannot be told. */
  readonly metric: string | undefined;
  readonly quantity: Quantity;
  readonly side?: Side;
  readonly condition?: 'warm' | 'cold';
}

/** Soreness or pain of a region on a day. */
export interface BodyReport {
  readonly kind: 'sore' | 'pain';
  readonly note: NotePath;
  readonly entry: SoreEntry | PainEntry;
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly region: string;
  /** 0 to 10, when it was written. */
  readonly rating?: Rating;
  /** Pain that is over. */
  readonly clear: boolean;
}

/** Something that went well. */
export interface Win {
  readonly note: NotePath;
  readonly entry: WinEntry;
  readonly date: IsoDate;
  readonly day: DayNumber;
}

/** How a goal is measured. */
export interface Metric {
  readonly goal: string | undefined;
  readonly name: string;
  readonly from?: Quantity;
  readonly to?: Quantity;
  readonly noise?: Quantity;
  readonly sides: boolean;
  readonly note: NotePath;
  readonly entry: EntryOf<'metric'>;
}

/** A smaller goal on the way. */
export interface Step {
  readonly goal: string | undefined;
  readonly id: string;
  readonly by?: IsoDate;
  readonly metric?: string;
  readonly to?: Quantity;
  readonly ticked: boolean;
  readonly note: NotePath;
  readonly entry: EntryOf<'step'>;
}

/** Sessions that a goal, or every week, asks for. */
export interface Need {
  /** The goal that asks; `undefined` when every week does. */
  readonly goal: string | undefined;
  readonly kind: string;
  readonly perWeek: PerWeek;
  readonly length?: LengthOfTime;
  readonly rating?: Rating;
  readonly gap?: LengthOfTime;
  readonly max?: PerWeek;
  readonly where?: string;
  readonly with: readonly string[];
  readonly routine?: string;
  readonly note: NotePath;
  readonly entry: EntryOf<'need'>;
}

/** A goal and what stands in its scope. */
export interface Goal {
  readonly id: string;
  /** The written title, or the id. */
  readonly title: string;
  readonly from?: IsoDate;
  readonly by?: IsoDate;
  /** Its task box is ticked: the goal is reached or given up. */
  readonly closed: boolean;
  readonly whys: readonly EntryOf<'why'>[];
  readonly metrics: readonly Metric[];
  readonly steps: readonly Step[];
  readonly needs: readonly Need[];
  readonly note: NotePath;
  readonly entry: EntryOf<'goal'>;
}

export interface Routine {
  readonly id: string;
  readonly kind?: string;
  readonly length?: LengthOfTime;
  readonly regions: readonly string[];
  readonly note: NotePath;
  readonly entry: EntryOf<'routine'>;
}

/** A rule that stands in the journal. Subject: a kind, a goal id, a region, `hard`, `rest-day` or `any`. */
export interface WrittenRule {
  readonly subject: string;
  readonly gap?: LengthOfTime;
  readonly min?: PerWeek;
  readonly max?: PerWeek;
  readonly cap?: LengthOfTime;
  readonly note: NotePath;
  readonly entry: EntryOf<'rule'>;
}

export interface FreeHours {
  readonly weekdays: readonly Weekday[];
  readonly span: TimeSpan;
  readonly where?: string;
  readonly with: readonly string[];
  readonly note: NotePath;
  readonly entry: EntryOf<'free'>;
}

export interface BusyTime {
  readonly days: DateRange;
  /** The whole day when left out. */
  readonly span?: TimeSpan;
  readonly note: NotePath;
  readonly entry: EntryOf<'busy'>;
}

export interface JournalEvent {
  readonly date: IsoDate;
  readonly name: string;
  readonly goals: readonly string[];
  readonly note: NotePath;
  readonly entry: EntryOf<'event'>;
}

/** Weeks laid out ahead, as a table of one note has them. */
export interface WrittenBlock {
  /** In order of time, each once. */
  readonly rows: readonly BlockRow[];
  readonly kinds: readonly Located<string>[];
  readonly note: NotePath;
  readonly entry: EntryOf<'block'>;
}

/** All that plans, gathered from every note of a journal, in order of path and place. */
export interface JournalPlan {
  /** Every goal with an id; of several with one id the first counts. */
  readonly goals: ReadonlyMap<string, Goal>;
  /** Goals whose id an earlier goal has taken. */
  readonly duplicateGoals: readonly Goal[];
  /** Goals without an id, in whose place nothing can be counted. */
  readonly namelessGoals: readonly { readonly note: NotePath; readonly entry: EntryOf<'goal'> }[];
  /** Needs of every goal, in the goals' order, then those of every week. */
  readonly needs: readonly Need[];
  readonly routines: ReadonlyMap<string, Routine>;
  readonly rules: readonly WrittenRule[];
  /** The athlete's own kinds and what each is like. */
  readonly kinds: ReadonlyMap<string, string | undefined>;
  readonly free: readonly FreeHours[];
  readonly busy: readonly BusyTime[];
  /** Calendar files of busy times, in order of path. */
  readonly calendars: readonly CalendarFile[];
  readonly events: readonly JournalEvent[];
  /** Where two of them have a row of one week, the first counts. */
  readonly blocks: readonly WrittenBlock[];
  readonly athlete?: {
    readonly name?: string;
    readonly minor: boolean;
    /** When a guardian agreed, as the journal's own note says; the earliest date. */
    readonly consent?: IsoDate;
    readonly born?: IsoDate;
  };
  /** The time zone that the journal names, when this machine knows it. */
  readonly zone?: string;
}

/** What changed when a note was replaced or removed. */
export interface JournalChange {
  readonly days: ReadonlySet<DayNumber>;
  /** Whether anything that plans was added, removed or altered, so that every week may read differently. */
  readonly plan: boolean;
}

/** One journal, as everything above this layer reads it. */
export interface Journal {
  /** The journal's folder from the folder that its source reads; empty for that folder itself. */
  readonly root: NotePath;
  readonly plan: JournalPlan;
  notes(): Iterable<Note>;
  note(path: NotePath): Note | undefined;
  /** The note or the calendar file at `path`, for places in it. */
  file(path: NotePath): JournalFile | undefined;
  /** The day notes of `day`, in order of path. */
  notesOf(day: DayNumber): readonly Note[];
  /** First and last day that has a day note, or `undefined` in a journal without any. */
  span(): { readonly first: DayNumber; readonly last: DayNumber } | undefined;
  /** Sessions of `first` to `last`, both included, in order of day and time; timeless ones end their day. Copies left out. */
  sessions(first: DayNumber, last: DayNumber): readonly Session[];
  /** Those of {@link sessions} of which nothing says what became of them: old notes without one are not read for it. */
  openSessions(first: DayNumber, last: DayNumber): readonly Session[];
  duplicateSessions(first: DayNumber, last: DayNumber): readonly DuplicateSession[];
  /** Readings of a goal, or of one of its metrics, in order of day and place; identical copies left out. */
  measurements(goal: string, metric?: string): readonly Measurement[];
  /** Every reading of the days, with or without a known goal. */
  measurementsBetween(first: DayNumber, last: DayNumber): readonly Measurement[];
  /** Soreness and pain of the days, or one of the two. */
  bodyReports(first: DayNumber, last: DayNumber, kind?: BodyReport['kind']): readonly BodyReport[];
  wins(first: DayNumber, last: DayNumber): readonly Win[];
  /** Every name seen so far, most used first, for completion. */
  names(of: 'with' | 'where' | 'region' | 'kind'): readonly string[];
}
