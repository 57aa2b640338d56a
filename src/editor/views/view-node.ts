import type { Session } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import type { SourceRange } from '../../notation/source-range';
import type { IsoDate } from '../../notation/time/iso-date';

/** Characters of a note of one of the workspace's journals. */
export interface ViewPlace {
  /** The journal's id. */
  readonly journal: string;
  readonly note: NotePath;
  readonly range: SourceRange;
}

/** What a row is, for the menus: `viewItem` in the manifest. */
export type ViewNodeKind =
  | 'journal'
  /** An athlete of a coach. */
  | 'athlete'
  | 'group'
  | 'day'
  /** A week that is to be looked back on. */
  | 'review'
  | 'session.open'
  /** A session of the running week that was not done. */
  | 'session.missed'
  | 'session.done'
  | 'session.skipped'
  | 'session.moved'
  | 'goal'
  | 'metric'
  | 'step'
  | 'need'
  | 'finding'
  | 'text';

/** A row of a tree view with the rows below it, as plain values in the person's language. */
export interface ViewNode {
  /** Unique in its view, and the same as long as the row speaks of the same thing. */
  readonly id: string;
  readonly kind: ViewNodeKind;
  /** The id of the journal that it belongs to. */
  readonly journal: string;
  readonly label: string;
  readonly description?: string;
  /** Lines of plain text. */
  readonly tooltip?: string;
  /** Name of one of the editor's own icons. */
  readonly icon?: string;
  /** What a screen reader says instead of the label. */
  readonly accessibilityLabel?: string;
  /** Where a click leads. */
  readonly place?: ViewPlace;
  readonly session?: Session;
  /** The id of a goal. */
  readonly goal?: string;
  readonly date?: IsoDate;
  /** Whether the rows below are shown before the person has chosen; they are when this is left out. */
  readonly collapsed?: boolean;
  readonly children: readonly ViewNode[];
}
