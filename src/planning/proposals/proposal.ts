import type { Goal, Journal, JournalEvent, Measurement, Metric, Need, Routine } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import type { TagName } from '../../notation/entries';
import type { IsoDate } from '../../notation/time/iso-date';

/** What a proposal is, for its sign and the sentence beside it. */
export type ProposalSubject =
  | { readonly is: 'tag'; readonly tag: TagName }
  | { readonly is: 'session-for-need'; readonly need: Need }
  | { readonly is: 'kind'; readonly origin: 'built-in' | 'own' | 'seen'; readonly like?: string }
  | { readonly is: 'goal'; readonly goal: Goal }
  | { readonly is: 'metric'; readonly metric: Metric }
  | { readonly is: 'reading'; readonly latest?: Measurement }
  | { readonly is: 'routine'; readonly routine: Routine }
  | {
      readonly is: 'date';
      readonly date: IsoDate;
      /** Days from today. */
      readonly days: number;
      readonly events: readonly JournalEvent[];
      /** Kinds of the sessions that stand on the day. */
      readonly sessions: readonly string[];
    }
  | { readonly is: 'field'; readonly name: string }
  | { readonly is: 'region'; readonly openPain: boolean }
  | {
      readonly is:
        | 'partner'
        | 'place'
        | 'reason'
        | 'side'
        | 'weekday'
        | 'flag'
        | 'subject'
        | 'value'
        | 'zone';
    };

/** Something that can be written where the cursor stands. */
export interface Proposal {
  /** What it is called, and what the typed characters are compared with. */
  readonly label: string;
  /** What is written; with `snippet` set, a snippet with {@link blank}s to fill in. */
  readonly text: string;
  readonly snippet: boolean;
  readonly subject: ProposalSubject;
  /** Whether the tag cannot do without it. */
  readonly asked: boolean;
  /** Whether the next thing to write can be proposed at once. */
  readonly continues: boolean;
}

/** What proposals are made from. */
export interface ProposalSource {
  readonly journal: Journal;
  readonly today: IsoDate;
  /** The note in which the cursor stands. */
  readonly note: NotePath;
  /** The day of a day note. */
  readonly date?: IsoDate;
}

/** Characters that a snippet would take for its own, kept as they are. */
export function snippetText(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

/** A place of a snippet to fill in, the `index`th to be visited, with the characters that stand there at first. */
export function blank(index: number, text: string | number): string {
  return `\${${index}:${snippetText(String(text))}}`;
}

/** A proposal that writes its own label. */
export function plain(label: string, subject: ProposalSubject, more: Partial<Proposal> = {}): Proposal {
  return { label, text: label, snippet: false, subject, asked: false, continues: false, ...more };
}

/** A proposal that writes a snippet. */
export function snippet(
  label: string,
  text: string,
  subject: ProposalSubject,
  more: Partial<Proposal> = {},
): Proposal {
  return { ...plain(label, subject, more), text, snippet: true };
}
