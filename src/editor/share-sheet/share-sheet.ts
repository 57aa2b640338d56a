import { micromark } from 'micromark';
import { gfmTable, gfmTableHtml } from 'micromark-extension-gfm-table';
import { withoutDirectionMarks } from '../../notation/direction-marks';
import type { Paper } from '../month-sheet/sheet-style';
import { printedPage } from '../printed-page';

/** How a note to share is printed. */
export interface ShareSheetOptions {
  readonly paper: Paper;
  /** BCP 47 tag. */
  readonly language: string;
}

/** Black on white, upright: what was kept and what was not is told by words and signs. */
function style(paper: Paper): string {
  return `@page { size: ${paper === 'a4' ? 'A4' : 'letter'} portrait; margin: 18mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font: 11pt/1.4 system-ui, sans-serif; overflow-wrap: anywhere; }
main { max-width: 174mm; margin: 0 auto; }
h1 { margin: 0 0 3mm; font-size: 18pt; line-height: 1.2; }
h2 { margin: 6mm 0 2mm; font-size: 13pt; break-after: avoid; }
p, ul, ol { margin: 0 0 2mm; }
ul, ol { padding-inline-start: 6mm; }
li { break-inside: avoid; }
table { width: 100%; margin: 0 0 3mm; border-collapse: collapse; table-layout: fixed; }
th, td { padding: 1.5mm 2mm; border: 0.2mm solid #000; text-align: start; vertical-align: top; }
tr { break-inside: avoid; }
pre { white-space: pre-wrap; }
a { color: #000; }
@media screen { body { padding: 8mm; } }`;
}

/**
 * A note to share as one HTML file to print: no script, nothing from anywhere else, upright on A4 or Letter. It holds
 * the words of the note as they read and no others; HTML in them stands as text, and pictures are not loaded.
 * @param note Markdown, as the person has read it and let it go
 */
export function shareSheet(note: string, { paper, language }: ShareSheetOptions): string {
  const content = micromark(withoutDirectionMarks(note), {
    extensions: [gfmTable()],
    htmlExtensions: [gfmTableHtml()],
  });
  const heading = /<h1>(.*?)<\/h1>/su.exec(content)?.[1] ?? '';
  return printedPage({
    language,
    title: heading.replace(/<[^<>]*>/gu, ''),
    style: style(paper),
    content,
  });
}
