import type { NotePath } from '../journal/note';
import type { TextEdit } from '../notation/text-edit';

/** A change to one note, planned as a value. Only the adapter that applies it touches a file. */
export type NoteChange =
  | {
      readonly kind: 'edit';
      readonly note: NotePath;
      /** The text that the ranges were counted in; a note that reads otherwise by now is not edited. */
      readonly before: string;
      /** In order, not overlapping. */
      readonly edits: readonly TextEdit[];
    }
  | {
      readonly kind: 'create';
      readonly note: NotePath;
      readonly text: string;
    };
