import type { SourceRange } from '../../notation/source-range';
import type { IsoWeek } from '../../notation/time/iso-week';
import { endOfLine } from '../line-ending';

/** The line above the facts of a week. */
export function factsBegin(week: IsoWeek): string {
  return `<!-- training journal: facts of ${week} -->`;
}

/** The line below them. */
export const factsEnd = '<!-- training journal: end of facts -->';

/** Where the facts of a week stand in a note. */
export type FactsPlace =
  /** From behind the first marked line to the start of the second. */
  | { readonly status: 'found'; readonly inside: SourceRange }
  /** The first marked line stands there, and the second does not. */
  | { readonly status: 'not-closed'; readonly begin: SourceRange }
  | { readonly status: 'absent' };

const fence = /^ {0,3}(`{3,}|~{3,})/;

/** Finds the marked lines of a week; lines within fenced code are no marks. */
export function findFacts(text: string, week: IsoWeek): FactsPlace {
  let open: string | undefined;
  let begin: SourceRange | undefined;
  for (let start = 0; start <= text.length; ) {
    const end = endOfLine(text, start);
    const line = text.slice(start, end);
    const mark = fence.exec(line)?.[1];
    if (open !== undefined) {
      if (mark?.startsWith(open) && line.trim() === mark) open = undefined;
    } else if (mark !== undefined) {
      open = mark;
    } else if (begin === undefined && line.trim() === factsBegin(week)) {
      begin = { start, end };
    } else if (begin !== undefined && line.trim() === factsEnd) {
      return { status: 'found', inside: { start: begin.end, end: start } };
    }
    start = end + (text.startsWith('\r\n', end) ? 2 : 1);
  }
  return begin === undefined ? { status: 'absent' } : { status: 'not-closed', begin };
}
