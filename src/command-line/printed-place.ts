import type { Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { lineColumnAt, type SourceRange } from '../notation/source-range';

/** Where something stands, as people and programs count: lines and columns from 1. */
export interface PrintedPlace {
  readonly file: NotePath;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** The place of `range` in a note of `journal`; the columns count UTF-16 units, as editors do. */
export function printedPlace(journal: Journal, note: NotePath, range: SourceRange): PrintedPlace {
  const starts = journal.file(note)?.lineStarts ?? [0];
  const start = lineColumnAt(starts, range.start);
  const end = lineColumnAt(starts, range.end);
  return {
    file: note,
    line: start.line + 1,
    column: start.column + 1,
    endLine: end.line + 1,
    endColumn: end.column + 1,
  };
}
