import * as vscode from 'vscode';
import type { JournalFile, Note } from '../journal/note';
import { lineColumnAt, lineStarts, type SourceRange } from '../notation/source-range';

/** The editor's range for characters of a text whose lines begin at `starts`. */
export function editorRange(starts: readonly number[], range: SourceRange): vscode.Range {
  const from = lineColumnAt(starts, range.start);
  const to = lineColumnAt(starts, range.end);
  return new vscode.Range(from.line, from.column, to.line, to.column);
}

/** The editor's range for characters of a note, or of another file of a journal. */
export function rangeInNote(note: JournalFile, range: SourceRange): vscode.Range {
  return editorRange(note.lineStarts, range);
}

/** The editor's range for characters of `text`. */
export function rangeInText(text: string, range: SourceRange): vscode.Range {
  return editorRange(lineStarts(text), range);
}

/** The offset in a note's text at which the editor's position stands. */
export function offsetInNote(note: Note, position: vscode.Position): number {
  return (note.lineStarts[position.line] ?? note.text.length) + position.character;
}
