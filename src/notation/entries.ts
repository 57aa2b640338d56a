import type { Quantity } from './quantity';
import type { Located, SourceRange } from './source-range';
import type { IsoDate } from './time/iso-date';
import type { IsoWeek } from './time/iso-week';
import type { LengthOfTime } from './time/length-of-time';
import type { TimeSpan } from './time/wall-clock';

/** What is nested under a tag's list item; it belongs to the athlete. */
export interface EntryBody {
  /** From the start of the line below the tag to the end of the list item, its last line ending left out. */
  readonly range: SourceRange;
}

/** The box of a GFM task list item. */
export interface TaskBox {
  readonly checked: boolean;
  /** The one character between the brackets. */
  readonly range: SourceRange;
}

/** What every entry has. All ranges point into the text of the entry's own note. */
export interface EntryBase {
  /** From `#` to the last character of the line's own text, trailing blanks left out. */
  readonly range: SourceRange;
  /** `#name`. */
  readonly nameRange: SourceRange;
  /** From the start of the list marker when the tag opens a list item, otherwise as `range`. */
  readonly itemRange: SourceRange;
  /** Behind the last field, or behind the name when there is none: where a new field goes. */
  readonly fieldsEnd: number;
  readonly task?: TaskBox;
  readonly remark?: Located<string>;
  readonly body?: EntryBody;
}

/** A count or a time that a week holds: `2/week`, `300min/week`. */
export type PerWeek =
  | { readonly count: number; readonly minutes?: undefined }
  | { readonly minutes: number; readonly count?: undefined };

/** Effort, soreness or pain on the scale of ten. */
export type Rating = number;

export type Side = 'left' | 'right';

/** Monday 1 to Sunday 7. */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** First and last day, both included. */
export interface DateRange {
  readonly first: IsoDate;
  readonly last: IsoDate;
}

// Tags that plan

export interface GoalEntry extends EntryBase {
  readonly tag: 'goal';
  readonly id?: Located<string>;
  readonly title?: Located<string>;
  readonly from?: Located<IsoDate>;
  readonly by?: Located<IsoDate>;
  /** From the tag to where the next goal or the next heading of the same depth begins. */
  readonly scope: SourceRange;
}

/** A tag that belongs to the goal in whose scope it stands. */
export interface WithinGoal {
  /** The goal's id, when there is a goal around the tag that has one. */
  readonly goal?: string;
}

export interface WhyEntry extends EntryBase, WithinGoal {
  readonly tag: 'why';
  /** The private reason, as written. */
  readonly words?: Located<string>;
}

export interface MetricEntry extends EntryBase, WithinGoal {
  readonly tag: 'metric';
  readonly name?: Located<string>;
  readonly from?: Located<Quantity>;
  readonly to?: Located<Quantity>;
  readonly noise?: Located<Quantity>;
  readonly sides?: Located<true>;
}

export interface StepEntry extends EntryBase, WithinGoal {
  readonly tag: 'step';
  readonly id?: Located<string>;
  readonly by?: Located<IsoDate>;
  readonly metric?: Located<string>;
  readonly to?: Located<Quantity>;
}

export interface NeedEntry extends EntryBase, WithinGoal {
  readonly tag: 'need';
  readonly kind?: Located<string>;
  readonly perWeek?: Located<PerWeek>;
  readonly length?: Located<LengthOfTime>;
  readonly rating?: Located<Rating>;
  readonly gap?: Located<LengthOfTime>;
  readonly max?: Located<PerWeek>;
  readonly where?: Located<string>;
  readonly with: readonly Located<string>[];
  readonly routine?: Located<string>;
}

export interface RoutineEntry extends EntryBase {
  readonly tag: 'routine';
  readonly id?: Located<string>;
  readonly kind?: Located<string>;
  readonly length?: Located<LengthOfTime>;
  readonly regions: readonly Located<string>[];
}

export interface RuleEntry extends EntryBase {
  readonly tag: 'rule';
  readonly subject?: Located<string>;
  readonly gap?: Located<LengthOfTime>;
  readonly min?: Located<PerWeek>;
  readonly max?: Located<PerWeek>;
  readonly cap?: Located<LengthOfTime>;
}

export interface KindEntry extends EntryBase {
  readonly tag: 'kind';
  readonly name?: Located<string>;
  readonly like?: Located<string>;
}

export interface FreeEntry extends EntryBase {
  readonly tag: 'free';
  readonly weekdays: readonly Located<Weekday>[];
  readonly span?: Located<TimeSpan>;
  readonly where?: Located<string>;
  readonly with: readonly Located<string>[];
}

export interface BusyEntry extends EntryBase {
  readonly tag: 'busy';
  readonly days?: Located<DateRange>;
  readonly span?: Located<TimeSpan>;
}

export interface EventEntry extends EntryBase {
  readonly tag: 'event';
  readonly date?: Located<IsoDate>;
  readonly name?: Located<string>;
  readonly for: readonly Located<string>[];
}

export interface AthleteEntry extends EntryBase {
  readonly tag: 'athlete';
  readonly name?: Located<string>;
  readonly minor?: Located<true>;
  /** When a guardian of an athlete under 18 agreed to photos and to notes that leave. */
  readonly consent?: Located<IsoDate>;
  readonly born?: Located<IsoDate>;
}

export interface ZoneEntry extends EntryBase {
  readonly tag: 'zone';
  readonly zone?: Located<string>;
}

/** What a week of a block holds of one kind: `2 x 60min`, or `120min` where the needs say in how many sessions. */
export interface WrittenVolume {
  readonly kind: string;
  /** Left out where only the minutes are written. */
  readonly sessions?: number;
  /** All of them together; 0 in an empty cell. */
  readonly minutes: number;
  /** The characters of the cell, blanks around them left out. */
  readonly range: SourceRange;
}

/** A row of a block's table. */
export interface BlockRow {
  readonly week: Located<IsoWeek>;
  readonly volumes: readonly WrittenVolume[];
  /** What stands under `notes`. */
  readonly words?: Located<string>;
}

/** The table below a `#block` tag: a row a week, a column a kind. */
export interface BlockTable {
  readonly kinds: readonly Located<string>[];
  readonly rows: readonly BlockRow[];
}

export interface BlockEntry extends EntryBase {
  readonly tag: 'block';
  readonly table?: BlockTable;
}

// Tags that log

export interface SessionEntry extends EntryBase {
  readonly tag: 'session';
  readonly kind?: Located<string>;
  readonly span?: Located<TimeSpan>;
  readonly length?: Located<LengthOfTime>;
  readonly rating?: Located<Rating>;
  readonly for: readonly Located<string>[];
  readonly with: readonly Located<string>[];
  readonly where?: Located<string>;
  readonly routine?: Located<string>;
  readonly skipped?: Located<string>;
  readonly moved?: Located<IsoDate>;
}

export interface MeasureEntry extends EntryBase {
  readonly tag: 'measure';
  readonly goal?: Located<string>;
  readonly metric?: Located<string>;
  readonly quantity?: Located<Quantity>;
  readonly side?: Located<Side>;
  readonly condition?: Located<'warm' | 'cold'>;
  readonly photo?: Located<string>;
}

export interface SoreEntry extends EntryBase {
  readonly tag: 'sore';
  readonly region?: Located<string>;
  readonly rating?: Located<Rating>;
}

export interface PainEntry extends EntryBase {
  readonly tag: 'pain';
  readonly region?: Located<string>;
  readonly rating?: Located<Rating>;
  readonly clear?: Located<true>;
}

export interface WinEntry extends EntryBase {
  readonly tag: 'win';
  readonly words?: Located<string>;
}

/** One tag of a note, read. */
export type Entry =
  | GoalEntry
  | WhyEntry
  | MetricEntry
  | StepEntry
  | NeedEntry
  | RoutineEntry
  | RuleEntry
  | KindEntry
  | FreeEntry
  | BusyEntry
  | EventEntry
  | BlockEntry
  | AthleteEntry
  | ZoneEntry
  | SessionEntry
  | MeasureEntry
  | SoreEntry
  | PainEntry
  | WinEntry;

export type TagName = Entry['tag'];

/** The entry type that `#name` gives. */
export type EntryOf<Tag extends TagName> = Extract<Entry, { tag: Tag }>;
