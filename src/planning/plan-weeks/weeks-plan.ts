import type { Need, Session } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { IsoDate } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import type { Message } from '../../training/finding';
import type { CheckOptions } from '../../training/week-under-check';
import type { NoteChange } from '../note-change';
import type { AskedSessions } from '../week-problem/asked-sessions';
import type { Demand } from '../week-problem/demands';
import type { TimeOfDay } from '../week-problem/places';
import type { ComfortableGap } from '../week-problem/problem-rules';

/** What is planned, and how. */
export interface PlanWeeksOptions extends CheckOptions {
  /** The weeks to plan, which follow each other. */
  readonly weeks: readonly IsoWeek[];
  /**
   * `new` adds what the weeks lack and leaves what stands where it is; `rearrange` gives sessions that are still to do
   * another place as well, as few as can be, and places again what was missed.
   */
  readonly mode?: 'new' | 'rearrange';
  /** Gaps that are wanted beyond the rules', as far as the weeks allow. */
  readonly comfortable?: readonly ComfortableGap[];
  /** Where in its hours a session is liked best; earlier when left out. */
  readonly timeOfDay?: TimeOfDay;
  /** Steps after which the search for the best plan is cut short; the solver's own limit when left out. */
  readonly nodeLimit?: number;
  /** Which of the sessions that the weeks lack are looked at; all when left out. */
  readonly only?: (demand: Demand) => boolean;
  /** Whether what does not fit is explained, which costs more searches; it is when left out. */
  readonly explain?: boolean;
}

/** A session that the weeks gain, or that gets another place. */
export interface PlannedSession {
  readonly date: IsoDate;
  /** Undefined in a journal whose sessions have no times. */
  readonly start?: WallMinutes;
  readonly minutes: number;
  readonly kind: string;
  readonly goal?: string;
  readonly with: readonly string[];
  /** Where it stood, when it moves. */
  readonly from?: Session;
  /** Why it stands there, in a few words: `coach; 71 h after Monday's`. */
  readonly why: Message;
  /** The same with the place in front: `Thursday 18:30: coach; 71 h after Monday's`. */
  readonly reason: Message;
  /** What it was asked as, for its note. */
  readonly asked: AskedSessions;
}

/** Like sessions that the weeks are asked to hold and that found no place. */
export interface LeftOutSession {
  readonly week: IsoWeek;
  readonly kind: string;
  readonly goal?: string;
  /** The need that asks for it; `undefined` when the minimum of a rule does. */
  readonly need?: Need;
  /** The session itself, when it stands already and was to get another place. It stays where it is. */
  readonly from?: Session;
  readonly why: Message;
}

/** A line of the journal that a plan speaks of. */
export interface NamedLine extends NotePlace {
  /** The characters of the place. */
  readonly text: string;
}

/** Why not everything fits. */
export interface PlanConflict {
  readonly week: IsoWeek;
  /** All of it in one sentence. */
  readonly sentence: Message;
  /** The lines that cannot stand together; giving up any one of them would let the others stand. */
  readonly lines: readonly NamedLine[];
  /** Whether it is proven that none of them could be left away. */
  readonly isSmallest: boolean;
}

/** One change that would let everything fit, tried by planning again. */
export interface PlanRemedy {
  readonly title: Message;
  /** The line to change, when there is one. */
  readonly line?: NamedLine;
  /** What writes it, where one limit of one line is all that changes; left out where the athlete has to say how. */
  readonly writes?: readonly NoteChange[];
}

/**
 * How sure a plan is: no other is better; or none better was found before the search was cut short. `impossible` says
 * that not everything that is asked for fits; the plan then holds the most important part of it.
 */
export type WeeksPlanStatus = 'proven best' | 'best found' | 'impossible';

/** Planned weeks, ready to be shown and written. */
export interface WeeksPlan {
  readonly weeks: readonly IsoWeek[];
  readonly status: WeeksPlanStatus;
  /** Whether no plan is better, everything that is left out included. */
  readonly isProven: boolean;
  /** In order of day and time. */
  readonly placed: readonly PlannedSession[];
  readonly leftOut: readonly LeftOutSession[];
  /** What is other than in the week before the first one. */
  readonly differences: readonly Message[];
  readonly conflict?: PlanConflict;
  /** The cheapest first. */
  readonly remedies: readonly PlanRemedy[];
  readonly changes: readonly NoteChange[];
}
