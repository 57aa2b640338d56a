import type { Journal } from '../../journal/journal';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { Message } from '../../training/finding';
import type { CheckOptions } from '../../training/week-under-check';
import type { NoteChange } from '../note-change';
import type { ComfortableGap } from '../week-problem/problem-rules';

/** A change of the notes, and what it does, in words. */
export interface ProposedChange {
  readonly title: Message;
  readonly changes: readonly NoteChange[];
}

/** The most training that a week is to hold, recovery left out. */
export interface WeekSizeLimit {
  readonly sessions: number;
  readonly minutes?: number;
  /** What would be hard is asked for more gently where it is off. */
  readonly allowsHard: boolean;
}

/** What a proposal does once it is taken. */
export type ProposalEffect =
  /** Changes notes; worked out for the notes as they are then, `undefined` when it has become needless. */
  | { readonly does: 'change'; readonly make: (journal: Journal) => ProposedChange | undefined }
  /** Wants sessions of the next week further apart, as far as the week allows. */
  | { readonly does: 'wish'; readonly gaps: readonly ComfortableGap[] }
  /** Asks less of the next week. */
  | { readonly does: 'limit'; readonly limit: WeekSizeLimit }
  /** Puts a line of plain words into a note of the next week, as a reminder to measure. */
  | { readonly does: 'remind'; readonly goal: string; readonly line: Message };

/** What a proposal is about. */
export type ProposalSubject = 'move' | 'apart' | 'gap' | 'smaller' | 'return' | 'reading';

/** Something that could be done otherwise, to be taken or left. */
export interface ReviewProposal {
  /** The same as long as it speaks of the same thing. */
  readonly id: string;
  readonly subject: ProposalSubject;
  /** What is done when it is taken. */
  readonly title: Message;
  /** What in the notes speaks for it. */
  readonly why: Message;
  /** To be shown with it. */
  readonly cautions: readonly Message[];
  readonly effect: ProposalEffect;
}

/** The two weeks of a review, and the day on which it is made. */
export interface ReviewedWeeks {
  readonly reviewed: IsoWeek;
  readonly planned: IsoWeek;
  readonly check: CheckOptions;
}
