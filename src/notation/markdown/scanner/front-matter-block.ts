import type { SourceRange } from '../../source-range';
import { isBlank } from './characters';
import { LineEndings } from './line-endings';

/** Front matter: the YAML between its fences, and where the line behind the closing fence begins. */
export interface FrontMatterBlock {
  readonly yaml: SourceRange;
  readonly behind: number;
}

function isFence(note: string, start: number, end: number): boolean {
  if (!note.startsWith('---', start) || end < start + 3) return false;
  let at = start + 3;
  while (at < end && isBlank(note.charCodeAt(at))) at += 1;
  return at === end;
}

/** The front matter that begins at offset `start`; without a second fence there is none. */
export function frontMatterBlock(note: string, start: number): FrontMatterBlock | undefined {
  if (!note.startsWith('---', start)) return undefined;
  const endings = new LineEndings(note);
  const firstEnd = endings.endOfLine(start);
  if (firstEnd === note.length || !isFence(note, start, firstEnd)) return undefined;
  const yamlStart = endings.behind(firstEnd);
  let yamlEnd = -1;
  for (let line = yamlStart; line <= note.length; ) {
    const end = endings.endOfLine(line);
    if (isFence(note, line, end)) {
      const yaml = yamlEnd < 0 ? { start: end, end } : { start: yamlStart, end: yamlEnd };
      return { yaml, behind: endings.behind(end) };
    }
    yamlEnd = end;
    line = endings.behind(end);
  }
  return undefined;
}
