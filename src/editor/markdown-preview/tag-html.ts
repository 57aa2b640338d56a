import type { Entry, SessionEntry } from '../../notation/entries';
import { namesInEntry } from '../../notation/entry-names';
import type { SourceRange } from '../../notation/source-range';
import type { SessionState } from '../../training/session-state';
import { htmlText } from '../html-text';

/** What the preview of a note knows beside its text. */
export interface PreviewNote {
  /** The state of a session and a word for it. */
  state(entry: SessionEntry): { readonly is: SessionState; readonly word: string } | undefined;
  /** An address that opens the page of a goal, or nothing where there is no such goal or page. */
  goalAddress(id: string): string | undefined;
}

/** Each state has a shape of its own, which also stands where there is no style sheet. */
const shapes: Readonly<Record<SessionState, string>> = {
  done: '☑',
  planned: '☐',
  overdue: '☐',
  skipped: '☒',
  moved: '➜',
};

/** States that the shape alone does not tell. */
const toldInWords: ReadonlySet<SessionState> = new Set(['overdue', 'skipped', 'moved']);

function span(kind: string, html: string, attributes = ''): string {
  return `<span class="training-${kind}"${attributes}>${html}</span>`;
}

interface Piece {
  readonly range: SourceRange;
  readonly html: (text: string) => string;
}

function boxPiece(entry: Entry, note: PreviewNote): readonly Piece[] {
  if (!entry.task) return [];
  const { range, checked } = entry.task;
  const state = entry.tag === 'session' ? note.state(entry) : undefined;
  const is = state?.is ?? (checked ? 'done' : 'planned');
  const label = state ? ` role="img" aria-label="${htmlText(state.word)}"` : '';
  return [
    // With its brackets.
    {
      range: { start: range.start - 1, end: range.end + 1 },
      html: () => span(`box training-${is}`, shapes[is], label),
    },
  ];
}

function tagPiece(entry: Entry, note: PreviewNote): Piece {
  const state = entry.tag === 'session' ? note.state(entry) : undefined;
  const word =
    state && toldInWords.has(state.is) ? ` ${span(`state training-${state.is}`, htmlText(state.word))}` : '';
  return { range: entry.nameRange, html: (text) => `${span('tag', htmlText(text))}${word}` };
}

function namePieces(entry: Entry, note: PreviewNote): readonly Piece[] {
  return namesInEntry(entry).flatMap(({ of, id, range }): readonly Piece[] => {
    const address = of === 'goal' || of === 'subject' ? note.goalAddress(id) : undefined;
    if (address === undefined) return [];
    return [
      { range, html: (text) => `<a class="training-goal" href="${htmlText(address)}">${htmlText(text)}</a>` },
    ];
  });
}

function remarkPiece({ remark }: Entry): readonly Piece[] {
  return remark ? [{ range: remark.range, html: (text) => span('remark', htmlText(text)) }] : [];
}

/**
 * The characters `range` of a note, in which an entry stands, as HTML: its box as a shape, its tag as a chip with the
 * state of a session, goals as links, and every other word as it is written.
 */
export function tagHtml(src: string, range: SourceRange, entry: Entry, note: PreviewNote): string {
  const pieces = [
    ...boxPiece(entry, note),
    tagPiece(entry, note),
    ...namePieces(entry, note),
    ...remarkPiece(entry),
  ].sort((one, other) => one.range.start - other.range.start);
  let html = '';
  let position = range.start;
  for (const piece of pieces) {
    if (piece.range.start < position || piece.range.end > range.end) continue;
    html +=
      htmlText(src.slice(position, piece.range.start)) +
      piece.html(src.slice(piece.range.start, piece.range.end));
    position = piece.range.end;
  }
  return html + htmlText(src.slice(position, range.end));
}
