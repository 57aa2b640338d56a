import { lineColumnAt, lineStarts } from '../../src/notation/source-range';
import { applyTextEdits, type TextEdit } from '../../src/notation/text-edit';
import { changeState, type NoteReturn, sameWords, takenBack } from '../../src/planning/change-outcome';
import { type LineEnding, lineEndingOf, withLineEnding } from '../../src/planning/line-ending';
import type { NoteChange } from '../../src/planning/note-change';

/** `text` with `\n` at the end of every line. */
export function inLines(text: string): string {
  return withLineEnding(text, '\n');
}

/** Edits that were counted in `before`, made in a document by their lines and columns, as an editor makes them. */
function madeByLine(document: string, before: string, edits: readonly TextEdit[]): string {
  const counted = lineStarts(before);
  const own = lineStarts(document);
  const offset = (one: number) => {
    const { line, column } = lineColumnAt(counted, one);
    return (own[line] ?? document.length) + column;
  };
  // What an editor inserts gets the document's line ending, whichever it comes with.
  const ending = lineEndingOf(document);
  return applyTextEdits(
    document,
    edits.map(({ range, text }) => ({
      range: { start: offset(range.start), end: offset(range.end) },
      text: ending === undefined ? text : withLineEnding(text, ending),
    })),
  );
}

/** A document has one line ending: that of most of its file's lines. CR alone is written as LF. */
function asDocument(text: string): string {
  const most = lineEndingOf(text);
  const ending: LineEnding = most === '\r\n' ? '\r\n' : '\n';
  return most === undefined ? text : withLineEnding(text, ending);
}

/** Notes in an editor that saves them, with its road back. Every answer is a new value. */
export interface EditedDocuments {
  /** What the files hold. */
  readonly texts: ReadonlyMap<string, string>;
  /** The sets of changes that were made, the last one at the end. */
  readonly done: readonly (readonly NoteChange[])[];
  /** The sets of changes that were taken back, the last one at the end. */
  readonly undone: readonly (readonly NoteChange[])[];
}

function isStale({ texts }: EditedDocuments, change: NoteChange): boolean {
  const text = texts.get(change.note);
  return change.kind === 'create'
    ? text !== undefined
    : text === undefined || !sameWords(text, change.before);
}

function withTexts(documents: EditedDocuments, changes: readonly (NoteChange | NoteReturn)[]) {
  const texts = new Map(documents.texts);
  for (const change of changes) {
    if (change.kind === 'create') texts.set(change.note, change.text);
    else if (change.kind === 'remove') texts.delete(change.note);
    else {
      const document = asDocument(texts.get(change.note) ?? '');
      texts.set(change.note, madeByLine(document, change.before, change.edits));
    }
  }
  return texts;
}

/** Makes planned changes; `undefined` when a note reads otherwise than it did when they were planned. */
export function withChanges(
  documents: EditedDocuments,
  changes: readonly NoteChange[],
): EditedDocuments | undefined {
  if (changes.some((change) => isStale(documents, change))) return undefined;
  return { texts: withTexts(documents, changes), done: [...documents.done, changes], undone: [] };
}

/** Takes the last set back; `undefined` when there is none, or when one of its notes reads otherwise by now. */
export function withUndo(documents: EditedDocuments): EditedDocuments | undefined {
  const last = documents.done.at(-1);
  if (!last?.every((change) => changeState(change, documents.texts.get(change.note)) === 'made'))
    return undefined;
  return {
    texts: withTexts(documents, last.map(takenBack)),
    done: documents.done.slice(0, -1),
    undone: [...documents.undone, last],
  };
}

/** Makes again what was taken back last; `undefined` when there is nothing, or when a note reads otherwise by now. */
export function withRedo(documents: EditedDocuments): EditedDocuments | undefined {
  const next = documents.undone.at(-1);
  const again = next && withChanges(documents, next);
  return again && { ...again, undone: documents.undone.slice(0, -1) };
}

/** What another program, or the athlete, does to a note: characters at a place. */
export function withWords(
  documents: EditedDocuments,
  note: string,
  at: number,
  words: string,
): EditedDocuments {
  const text = documents.texts.get(note) ?? '';
  const offset = at % (text.length + 1);
  const texts = new Map(documents.texts);
  texts.set(note, text.slice(0, offset) + words + text.slice(offset));
  return { ...documents, texts };
}
