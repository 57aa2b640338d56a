/**
 * A text in lines, broken between words; a longer word has a line of its own.
 * @param widthOf The most characters of a line, by its number from 0.
 */
export function linesOf(text: string, widthOf: (line: number) => number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && line.length + 1 + word.length > widthOf(lines.length)) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines;
}
