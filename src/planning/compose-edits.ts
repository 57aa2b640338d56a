import type { TextEdit } from '../notation/text-edit';

/** A stretch of a text that has been edited: characters of the text before, or new ones. */
type Piece = { readonly start: number; readonly end: number } | { readonly text: string };

function lengthOf(piece: Piece): number {
  return 'text' in piece ? piece.text.length : piece.end - piece.start;
}

/** The part of a piece from its `from`th character up to its `to`th. */
function cut(piece: Piece, from: number, to: number): Piece {
  return 'text' in piece
    ? { text: piece.text.slice(from, to) }
    : { start: piece.start + from, end: piece.start + to };
}

/** The characters `from` to `to` of a text that consists of `pieces`. */
function between(pieces: readonly Piece[], from: number, to: number): readonly Piece[] {
  const found: Piece[] = [];
  let position = 0;
  for (const piece of pieces) {
    const length = lengthOf(piece);
    const first = Math.max(0, from - position);
    const last = Math.min(length, to - position);
    if (first < last) found.push(cut(piece, first, last));
    position += length;
  }
  return found;
}

/** The pieces after `edits`, which are in order and do not overlap. */
function edited(pieces: readonly Piece[], edits: readonly TextEdit[]): readonly Piece[] {
  const after: Piece[] = [];
  let position = 0;
  for (const { range, text } of edits) {
    after.push(...between(pieces, position, range.start), { text });
    position = range.end;
  }
  const end = pieces.reduce((sum, piece) => sum + lengthOf(piece), 0);
  return [...after, ...between(pieces, position, end)];
}

/**
 * The edits that do in one step what two lists of edits do one after the other. Both lists are in order and do not
 * overlap, and so is the one that comes back; what none of them touched is in none of its ranges.
 * @param length Characters of the text that `first` was made for.
 * @param second Made for the text that `first` leads to.
 */
export function composeEdits(
  length: number,
  first: readonly TextEdit[],
  second: readonly TextEdit[],
): readonly TextEdit[] {
  const pieces = edited(edited([{ start: 0, end: length }], first), second);
  const edits: TextEdit[] = [];
  let text = '';
  let position = 0;
  const until = (start: number): void => {
    if (text !== '' || start > position) edits.push({ range: { start: position, end: start }, text });
    text = '';
  };
  for (const piece of pieces) {
    if ('text' in piece) {
      text += piece.text;
      continue;
    }
    until(piece.start);
    position = piece.end;
  }
  until(length);
  return edits;
}
