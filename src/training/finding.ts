import type { NotePath } from '../journal/note';
import { withoutDirectionMarks } from '../notation/direction-marks';
import type { SourceRange } from '../notation/source-range';

/** Every code a finding can have. Each has a page in `media/guide/findings/`. */
export const findingCodes = [
  'gap-too-short',
  'week-over-maximum',
  'week-under-minimum',
  'no-recovery-session',
  'no-rest-day',
  'day-over-cap',
  'session-overdue',
  'outside-free-hours',
  'overlapping-sessions',
  'no-time-with-partner',
  'open-pain',
  'under-18-hours',
  'under-18-rest',
  'under-18-photo',
  'goal-without-metric',
  'goal-without-date',
  'goal-without-why',
  'unreadable-field',
  'unknown-tag',
  'unknown-goal',
  'unknown-metric',
  'unit-mismatch',
  'duplicate-goal',
  'duplicate-session',
  'bad-date',
  'unreadable-calendar',
  'goal-pace',
  'goal-hours',
  'slipping',
  'gap-worth-changing',
] as const;

export type FindingCode = (typeof findingCodes)[number];

export type Severity = 'error' | 'warning' | 'information';

/**
 * A sentence with numbered places: `{0} h after {1}`. The template is the key under which a translation is
 * found; {@link fillMessage} makes the English sentence.
 */
export interface Message {
  readonly template: string;
  readonly values: readonly (string | number)[];
}

/** The values of a message, ready to stand in a sentence. */
export function valuesToSay({ values }: Message): readonly (string | number)[] {
  return values.map((value) => (typeof value === 'string' ? withoutDirectionMarks(value) : value));
}

/** The sentence of a message in English. */
export function fillMessage(message: Message): string {
  const values = valuesToSay(message);
  return message.template.replace(/\{(\d+)\}/g, (place, index) => String(values[Number(index)] ?? place));
}

/** Another place that a finding speaks of. */
export interface RelatedPlace {
  readonly note: NotePath;
  readonly range: SourceRange;
  readonly message: Message;
}

/** Ways to mend a finding; the planning layer turns each into edits. */
export type RemedyName =
  | 'move-to-legal-day'
  | 'swap-with-another-day'
  | 'turn-into-recovery'
  | 'mark-skipped'
  | 'tick-as-done'
  | 'add-recovery-session'
  | 'replace-text'
  | 'add-goal'
  | 'add-why'
  | 'add-date'
  | 'add-metric'
  | 'clear-pain'
  | 'move-goal-date'
  | 'write-rule'
  | 'smaller-next-week'
  | 'ramp-back';

/** One thing that the notes say and a rule, a goal or the notation does not allow. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly note: NotePath;
  /** The exact characters it stands on. */
  readonly range: SourceRange;
  readonly message: Message;
  /** The numbers and names behind the sentence. */
  readonly facts: Readonly<Record<string, string | number>>;
  readonly related: readonly RelatedPlace[];
  readonly remedies: readonly RemedyName[];
}
