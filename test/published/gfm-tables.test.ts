// Where a table begins and ends, and what its cells hold.
// Source: GitHub Flavored Markdown Spec 0.29-gfm, section 4.10, examples 198 to 205 [M: their texts, from memory], against
// `remark-gfm` 4.0.1, a reference implementation of it.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { findTable } from '../../src/notation/table-rows';

interface Node {
  readonly type: string;
  readonly children?: readonly Node[];
  readonly position?: { readonly start: { offset?: number }; readonly end: { offset?: number } };
}

/** The source of the cells of the first table that stands in the text itself, as the reference finds them. */
function referenceCells(text: string): string[][] | undefined {
  const tree = unified().use(remarkParse).use(remarkGfm).parse(text) as unknown as Node;
  const table = tree.children?.find(({ type }) => type === 'table');
  const width = table?.children?.[0]?.children?.length ?? 0;
  return table?.children?.map((row) => {
    const cells = (row.children ?? []).map(({ position }) =>
      text
        .slice(position?.start.offset, position?.end.offset)
        .trim()
        .replace(/^\|/, '')
        .replace(/(?<!\\)\|$/, '')
        .trim()
        .replaceAll('\\|', '|'),
    );
    return Array.from({ length: width }, (_, index) => cells[index] ?? '');
  });
}

function ownCells(text: string): string[][] | undefined {
  const table = findTable(text, { start: 0, end: text.length });
  return table && [table.header, ...table.rows].map((row) => row.map(({ value }) => value));
}

const examples = [
  '| foo | bar |\n| --- | --- |\n| baz | bim |\n',
  '| abc | defghi |\n:-: | -----------:\nbar | baz\n',
  '| f\\|oo  |\n| ------ |\n| b `\\|` az |\n| b **\\|** im |\n',
  '| abc | def |\n| --- | --- |\n| bar | baz |\n> bar\n',
  '| abc | def |\n| --- | --- |\n| bar | baz |\nbar\n\nbar\n',
  '| abc | def |\n| --- |\n| bar |\n',
  '| abc | def |\n| --- | --- |\n| bar |\n| bar | baz | boo |\n',
  '| abc | def |\n| --- | --- |\n',
];

describe('tables of GitHub Flavored Markdown', () => {
  it('are found with the cells that the reference finds, in the examples of the specification', () => {
    for (const text of examples) assert.deepEqual(ownCells(text), referenceCells(text), text);
    assert.equal(examples.filter((text) => ownCells(text) !== undefined).length, 7);
  });

  it('are found with the same cells in any lines of a block note', () => {
    const cell = fc.constantFrom('2026-W10', '2 x 60min', '', 'a\\|b', '`c`', '–', 'words of mine');
    const row = fc
      .tuple(
        fc.array(cell, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('|', ''),
        fc.constantFrom('|', ''),
      )
      .map(([cells, first, last]) => `${first} ${cells.join(' | ')} ${last}`);
    const delimiter = fc
      .array(fc.constantFrom('---', ':-:', '-:'), { minLength: 1, maxLength: 4 })
      .map((cells) => `|${cells.join('|')}|`);
    // A table under a list item is one here as well; the reference counts it to the item.
    const above = fc.constantFrom('', 'words', '# Heading', '***', '    code');
    const other = fc.oneof(above, fc.constantFrom('- item', '```'));
    const line = fc.oneof({ weight: 4, arbitrary: row }, delimiter, other);
    const table = fc
      .tuple(fc.array(above, { maxLength: 2 }), row, delimiter, fc.array(line, { maxLength: 5 }))
      .map(([first, header, dashes, below]) => [...first, '', header, dashes, ...below].join('\n'));
    let found = 0;
    fc.assert(
      fc.property(table, (text) => {
        const expected = referenceCells(text);
        if (expected) found += 1;
        assert.deepEqual(ownCells(text), expected);
      }),
      { seed: 410, numRuns: 600 },
    );
    assert.ok(found > 60, `${found} tables`);
  });
});
