import type { IsoDate } from '../notation/time/iso-date';

/** What every command is asked to look at. */
export interface FolderOptions {
  /** As it was typed. */
  readonly folder: string;
  readonly today?: IsoDate;
  readonly zone?: string;
  readonly json: boolean;
  /** How many weeks back, for those commands that look back. */
  readonly weeks?: number;
  /** The accepted chance of still being sore, inside 0..1, for `recovery`. */
  readonly chance?: number;
}
