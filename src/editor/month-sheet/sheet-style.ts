/** Paper that a month is printed on. */
export type Paper = 'a4' | 'letter';

/** Height of a page across, its margins of 10 mm taken off, in millimetres. ISO 216; ANSI/ASME Y14.1 (from memory). */
const heights: Readonly<Record<Paper, number>> = { a4: 210 - 20, letter: 215.9 - 20 };

/** Heading, names of weekdays, totals and legend take about so much of it, in millimetres. */
const aroundGrid = 40;

const millimetresAPoint = 25.4 / 72;
const lineHeight = 1.25;
const largest = 9;
/** Below this nobody reads it: a fuller month then takes a second page. */
const smallest = 4.5;

/** The size of letters, in points, at which rows of so many lines fit on the page. */
export function letterSize(paper: Paper, rowLines: readonly number[]): number {
  // The padding of a row is most of a line.
  const lines = rowLines.reduce((sum, count) => sum + count + 0.8, 0);
  const fitting = (heights[paper] - aroundGrid) / (lines * lineHeight * millimetresAPoint);
  return Math.max(smallest, Math.min(largest, Math.floor(fitting * 10) / 10));
}

/** The style sheet of the printed month: black on white, so that shapes and words carry everything. */
export function sheetStyle(paper: Paper, rowLines: readonly number[]): string {
  const size = letterSize(paper, rowLines);
  const rowHeight = Math.floor((heights[paper] - aroundGrid) / Math.max(1, rowLines.length));
  return `@page { size: ${paper === 'a4' ? 'A4' : 'letter'} landscape; margin: 10mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font-family: system-ui, sans-serif; font-size: ${size}pt; line-height: ${lineHeight}; overflow-wrap: anywhere; }
main { max-width: 277mm; margin: 0 auto; }
h1 { margin: 0 0 2mm; font-size: 18pt; line-height: 1.2; }
p { margin: 2mm 0 1mm; font-size: 8.5pt; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; }
tr { break-inside: avoid; }
th { padding: 0.5mm 1mm; border-bottom: 0.5mm solid #000; font-size: 8.5pt; text-align: start; }
td { padding: 0.3em 0.5em; border: 0.2mm solid #000; vertical-align: top; }
tbody tr { height: ${Math.min(rowHeight, 34)}mm; }
th.week, td.week { width: 15%; }
td.week { border-style: dotted; }
td.other { border-style: dashed; font-style: italic; }
.number { display: block; font-weight: 700; }
td.other .number { font-weight: 400; }
.word { display: block; text-decoration: underline; }
.session { display: flex; gap: 0.35em; align-items: baseline; }
.mark { flex: none; width: 1.15em; height: 1.15em; transform: translateY(0.2em); fill: none; stroke: #000; stroke-width: 1.4; }
.mark .full { fill: #000; }
.mark .cut { stroke: #fff; stroke-width: 2; }
.line { flex: 1; border-bottom: 0.2mm solid #000; height: 1em; }
ul { display: flex; flex-wrap: wrap; gap: 0 5mm; margin: 0; padding: 0; list-style: none; font-size: 8.5pt; }
li { display: flex; gap: 0.4em; align-items: baseline; }
@media screen { body { padding: 8mm; } }
@media print { * { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }`;
}
