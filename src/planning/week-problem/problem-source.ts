import type { BodyReport, BusyTime, FreeHours, JournalEvent, Need } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { Weekday } from '../../notation/entries';
import type { Rule } from '../../training/default-rules';
import type { SessionFacts } from '../../training/session-facts';
import type { AskedSessions } from './asked-sessions';

/** The side of a rule or need that a rule of the solver stands for. */
export type RuleAspect = 'gap' | 'max' | 'min' | 'cap' | 'rest-day';

/** What an id in a problem stands for in the journal. */
export type ProblemSource =
  /** Sessions that are wanted. */
  | { readonly about: 'asked'; readonly asked: AskedSessions }
  /** A session that stands and cannot move. */
  | { readonly about: 'standing'; readonly facts: SessionFacts }
  | { readonly about: 'rule'; readonly rule: Rule; readonly aspect: RuleAspect }
  | { readonly about: 'need'; readonly need: Need; readonly aspect: RuleAspect }
  | { readonly about: 'pain'; readonly report: BodyReport }
  | { readonly about: 'busy'; readonly busy: BusyTime }
  | { readonly about: 'calendar'; readonly place: NotePlace; readonly summary: string | undefined }
  | { readonly about: 'event'; readonly event: JournalEvent }
  /** A weekday on which the free hours are too short, or none, for a session. */
  | { readonly about: 'hours'; readonly weekday: Weekday; readonly lines: readonly FreeHours[] }
  /** Hours that are kept for a partner or a place. */
  | { readonly about: 'company'; readonly name: string; readonly lines: readonly FreeHours[] }
  /** What is wanted and no rule: air, days in a row. */
  | { readonly about: 'wish' };
