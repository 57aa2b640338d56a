import type { NotePath } from '../journal/note';
import type { SourceRange } from '../notation/source-range';
import { applyTextEdits, type TextEdit } from '../notation/text-edit';
import { withLineEnding } from './line-ending';
import type { NoteChange } from './note-change';

/** A note that was created is to go again, as long as nobody has written in it since. */
export interface NoteRemoval {
  readonly kind: 'remove';
  readonly note: NotePath;
  /** The text with which it was created. */
  readonly before: string;
}

/** What is to be done to a note on the way back. */
export type NoteReturn = Extract<NoteChange, { readonly kind: 'edit' }> | NoteRemoval;

/**
 * How a note reads after a change was to be made in it. `made`: as wanted. `missing`: as before. `other`: neither, since
 * a part was written, or someone else wrote in it; what stands there is nobody's to overwrite.
 */
export type ChangeState = 'made' | 'missing' | 'other';

/** What became of a set of changes, in the order in which they were planned. */
export interface ChangeOutcome {
  readonly made: readonly NoteChange[];
  readonly missing: readonly NoteChange[];
  readonly other: readonly NoteChange[];
}

/** Whether two texts differ in no more than their line endings, which an editor makes alike when it opens a file. */
export function sameWords(one: string, other: string): boolean {
  return one === other || withLineEnding(one, '\n') === withLineEnding(other, '\n');
}

/** The text of the note once the change is made. */
export function wantedText(change: NoteChange): string {
  return change.kind === 'create' ? change.text : applyTextEdits(change.before, change.edits);
}

/**
 * What became of a change.
 * @param found How the note reads now; `undefined` when it is not there.
 */
export function changeState(change: NoteChange, found: string | undefined): ChangeState {
  if (found === undefined) return change.kind === 'create' ? 'missing' : 'other';
  if (sameWords(found, wantedText(change))) return 'made';
  return change.kind === 'edit' && sameWords(found, change.before) ? 'missing' : 'other';
}

/**
 * Sorts changes by what became of them.
 * @param textOf How a note reads now; `undefined` when it is not there.
 */
export function changeOutcome(
  changes: readonly NoteChange[],
  textOf: (note: NotePath) => string | undefined,
): ChangeOutcome {
  const inState = (state: ChangeState) =>
    changes.filter((change) => changeState(change, textOf(change.note)) === state);
  return { made: inState('made'), missing: inState('missing'), other: inState('other') };
}

/** The edits that make the text before `edits` out of the text after them. */
function editsBack(before: string, edits: readonly TextEdit[]): readonly TextEdit[] {
  let shift = 0;
  return edits.map(({ range, text }) => {
    const start = range.start + shift;
    const back: SourceRange = { start, end: start + text.length };
    shift += text.length - (range.end - range.start);
    return { range: back, text: before.slice(range.start, range.end) };
  });
}

/** What takes back a change that was made: made in the note as it was wanted, it gives the note as it was before. */
export function takenBack(change: NoteChange): NoteReturn {
  if (change.kind === 'create') return { kind: 'remove', note: change.note, before: change.text };
  const { note, before, edits } = change;
  return { kind: 'edit', note, before: wantedText(change), edits: editsBack(before, edits) };
}
