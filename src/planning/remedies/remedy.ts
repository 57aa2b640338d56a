import type { Journal } from '../../journal/journal';
import type { Finding, Message, RemedyName } from '../../training/finding';
import type { CheckOptions } from '../../training/week-under-check';
import type { NoteChange } from '../note-change';

/** One way to mend a finding, ready to be offered and applied. */
export interface Remedy {
  readonly name: RemedyName;
  /** What it does, with the days and times that it would write. */
  readonly title: Message;
  readonly changes: readonly NoteChange[];
  /** Whether it is what most people would do; at most one of a finding's remedies is. */
  readonly preferred: boolean;
}

/** A finding that wants mending, in the journal in which it was found. */
export interface ToMend {
  readonly journal: Journal;
  readonly finding: Finding;
  readonly options: CheckOptions;
}

/** Works out the remedies of one name; none when the notes no longer allow it. */
export type RemedyMaker = (mend: ToMend) => Iterable<Remedy>;
