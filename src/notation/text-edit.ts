import type { SourceRange } from './source-range';

/** Characters to put in place of a range of a note's text. */
export interface TextEdit {
  readonly range: SourceRange;
  readonly text: string;
}

/** `text` with `edits`, which are in order and do not overlap, made in it. */
export function applyTextEdits(text: string, edits: readonly TextEdit[]): string {
  let result = '';
  let position = 0;
  for (const edit of edits) {
    result += text.slice(position, edit.range.start) + edit.text;
    position = edit.range.end;
  }
  return result + text.slice(position);
}
