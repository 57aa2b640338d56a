import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readNote } from '../../src/notation/read-note';
import { cut, only, problemsOf } from './reading';

const note = `# Block 2026-W10 to 2026-W12

#block

| week     | flexibility | strength  | notes                |
| -------- | ----------- | --------- | -------------------- |
| 2026-W10 | 2 x 60min   | 2 x 45min | building             |
| 2026-W11 | 2×1h05      | 90min     |                      |
| 2026-W12 | 2x45 min    | -         | lighter: half term   |
`;

/** The volumes of each row in short: `flexibility 2 x 60`. */
function rowsOf(text: string): string[] {
  return (only('block', text).table?.rows ?? []).map(({ week, volumes, words }) =>
    [
      week.value,
      ...volumes.map(({ kind, sessions, minutes }) => `${kind} ${sessions ?? '?'}: ${minutes}`),
      ...(words ? [words.value] : []),
    ].join(', '),
  );
}

/** The example with one cell changed. */
const withCell = (before: string, after: string) => note.replace(before, after);

describe('the table below #block', () => {
  it('has a row a week, a column a kind, and notes', () => {
    assert.deepEqual(rowsOf(note), [
      '2026-W10, flexibility 2: 120, strength 2: 90, building',
      '2026-W11, flexibility 2: 130, strength ?: 90',
      '2026-W12, flexibility 2: 90, strength 0: 0, lighter: half term',
    ]);
    assert.deepEqual(problemsOf(note), []);
  });

  it('knows the exact characters of its cells', () => {
    const { table } = only('block', note);
    assert.deepEqual(
      table?.kinds.map(({ range }) => cut(note, range)),
      ['flexibility', 'strength'],
    );
    assert.equal(cut(note, table?.rows[2]?.week.range), '2026-W12');
    assert.equal(cut(note, table?.rows[2]?.volumes[0]?.range), '2x45 min');
    assert.equal(cut(note, table?.rows[2]?.words?.range), 'lighter: half term');
  });

  it('reads with any line ending, and with a byte order mark', () => {
    for (const ending of ['\r\n', '\r']) {
      const text = `\ufeff${note.replaceAll('\n', ending)}`;
      assert.deepEqual(rowsOf(text), rowsOf(note));
      assert.equal(cut(text, only('block', text).table?.rows[0]?.volumes[1]?.range), '2 x 45min');
    }
  });

  it('tells of a cell that is no volume on its characters, and reads all the others', () => {
    const text = withCell('2×1h05', 'two long ones');
    assert.deepEqual(problemsOf(text), ['not-a-volume: two long ones']);
    assert.deepEqual(rowsOf(text)[1], '2026-W11, strength ?: 90');
    for (const cell of ['2', '2 x', '60', '2 x 7d', '99 x 24h', '-2 x 60min', '2 x 60min!', 'x 60min'])
      assert.deepEqual(problemsOf(withCell('2×1h05', cell)), [`not-a-volume: ${cell}`], cell);
  });

  it('tells of a week that is none, stands twice or is missing', () => {
    assert.deepEqual(problemsOf(withCell('2026-W11', '2026-W60')), ['not-a-week: 2026-W60']);
    assert.deepEqual(problemsOf(withCell('2026-W11', '')), ['not-a-week: 2×1h05']);
    assert.deepEqual(problemsOf(withCell('2026-W11', '2026-W10')), ['repeated-week: 2026-W10']);
    assert.equal(rowsOf(withCell('2026-W11', '2026-W60')).length, 2);
  });

  it('tells of a column that is no kind, and of a tag without a table', () => {
    assert.deepEqual(problemsOf(withCell('| strength ', '| hard work ')), ['not-a-word: hard work']);
    assert.deepEqual(problemsOf('#block\n\nlater\n'), ['no-table: #block']);
    assert.deepEqual(problemsOf(note.replace('\n\n| week', '\n\n# Next\n\n| week')), ['no-table: #block']);
    assert.deepEqual(problemsOf('#block spring\n\n| week |\n| --- |\n'), ['unexpected-word: spring']);
  });

  it('is not looked for in code, in a comment or in a quotation', () => {
    const table = note.slice(note.indexOf('| week'));
    const quoted = table.replace(/^/gm, '> ');
    for (const hidden of [`\`\`\`\n${table}\`\`\`\n`, `<!--\n${table}-->\n`, quoted]) {
      assert.deepEqual(problemsOf(`#block\n\n${hidden}`), ['no-table: #block']);
      assert.equal(rowsOf(`#block\n\n${hidden}\n${table}`).length, 3);
    }
  });

  it('ends with the next empty line, so that what is written below stays words', () => {
    const { entries } = readNote(`${note}\n| 2026-W13 | 9 x 9h | | |\n\n- #win all of it\n`);
    assert.deepEqual(
      entries.map(({ tag }) => tag),
      ['block', 'win'],
    );
    assert.equal(rowsOf(`${note}\n| 2026-W13 | 9 x 9h | | |\n`).length, 3);
  });
});
