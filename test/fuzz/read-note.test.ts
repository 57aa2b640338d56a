import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { readNote } from '../../src/notation/read-note';
import type { SourceRange } from '../../src/notation/source-range';
import { applyTextEdits } from '../../src/notation/text-edit';
import { addFieldEdits, fieldTokensOf, tickEdits } from '../../src/notation/write-entry';
import { anyText } from './any-text';
import { fuzzRuns, fuzzTimeout } from './fuzz-runs';

const pieces = [
  ...[
    '---\n',
    'title: x\n',
    'goal: "a\n',
    '- [ ] ',
    '- [x] ',
    '- ',
    '* ',
    '1. ',
    '> ',
    '# ',
    '```\n',
    '<!-- ',
    ' -->',
  ],
  ...[
    '#session ',
    '#measure ',
    '#goal ',
    '#metric ',
    '#need ',
    '#rule ',
    '#free ',
    '#busy ',
    '#event ',
    '#routine ',
  ],
  ...['#step ', '#sore ', '#pain ', '#rest ', '#win ', '#why ', '#kind ', '#sesion ', '#Session ', '#'],
  ...[
    'flexibility ',
    'hard ',
    'mon tue ',
    '18:30 ',
    '18:30-20:00 ',
    '23:30-00:30 ',
    '25:00 ',
    '75min ',
    '1h30 ',
    '2h ',
  ],
  ...[
    '7/10 ',
    '11/10 ',
    'cleared ',
    'recovery ',
    'rest-day ',
    '-- ',
    '— ',
    '12,5cm ',
    '-3deg ',
    '1e999kg ',
    '3reps ',
  ],
  ...[
    'by:2026-06-14 ',
    'moved:2026-02-30 ',
    'moved:2026-02-26 ',
    'skipped:sore ',
    'with:coach ',
    'with:"a b" ',
  ],
  ...['with:"', 'gap:48h ', 'gap:2d ', 'max:3/week ', 'min:0/week ', 'cap:90min ', '2/week ', '150min/week '],
  ...[
    '2026-02-24..2026-02-28 ',
    'left ',
    'right ',
    'photo:../x.jpg ',
    'target:0cm ',
    'noise:1cm ',
    'regions:legs ',
  ],
  ...['`', '``', '[', '](u)', '![', '<b>', '</b>', '\\', '&amp;', '*', '_', ':', '"', '=\n', '===\n', '\n\n'],
];

/** Lines that begin as tags do, and go on in any way. */
const tagLines = fc
  .array(
    fc.tuple(
      fc.constantFrom(
        '- [ ] #session skill ',
        '- [x] #session ',
        '  * [ ] #need ',
        '> #measure ',
        '- #sore ',
        '',
      ),
      anyText(pieces, 6),
      fc.constantFrom('\n', '\r\n', '\n\n', ''),
    ),
    { maxLength: 6 },
  )
  .map((lines) => lines.flat().join(''));

function assertInside(text: string, range: SourceRange, what: string): void {
  assert.ok(
    range.start >= 0 && range.start <= range.end && range.end <= text.length,
    `${what}: ${range.start} to ${range.end} of ${text.length}`,
  );
}

/** Every range that stands anywhere in a value. */
function* rangesIn(value: unknown): Generator<SourceRange> {
  if (typeof value !== 'object' || value === null) return;
  if ('start' in value && 'end' in value && Object.keys(value).length === 2) {
    const { start, end } = value;
    if (typeof start === 'number' && typeof end === 'number') return;
  }
  for (const [name, part] of Object.entries(value)) {
    if (/range$/i.test(name) && typeof part === 'object' && part !== null) yield part as SourceRange;
    else yield* rangesIn(part);
  }
}

describe('any text at all, read as a note', function () {
  this.timeout(fuzzTimeout);
  it('is read without an error, twice alike, with every range inside it', () => {
    let entries = 0;
    let problems = 0;
    fc.assert(
      fc.property(fc.oneof(anyText(pieces), tagLines), (text) => {
        const reading = readNote(text);
        entries += reading.entries.length;
        problems += reading.problems.length;
        assert.deepEqual(readNote(text), reading);
        for (const range of rangesIn(reading)) assertInside(text, range, 'range');
        for (const entry of reading.entries)
          assert.equal(text.slice(entry.nameRange.start, entry.nameRange.end).toLowerCase(), `#${entry.tag}`);
        // What is missing has no characters.
        // What is missing has no characters.
        for (const { range, text: said } of reading.problems)
          if (said !== '') assert.equal(said.length, range.end - range.start);
      }),
      fuzzRuns,
    );
    // Texts in which nothing is ever found would show nothing.
    assert.ok(entries > fuzzRuns.numRuns, `${entries} entries`);
    assert.ok(problems > fuzzRuns.numRuns / 2, `${problems} problems`);
  });

  it('keeps every entry where it was when one of them is ticked or gets a field', () => {
    let written = 0;
    fc.assert(
      fc.property(tagLines, fc.nat(), (text, choice) => {
        const before = readNote(text).entries;
        const entry = before[choice % Math.max(1, before.length)];
        if (!entry) return;
        const index = before.indexOf(entry);
        if (entry.task) {
          const ticked = applyTextEdits(text, tickEdits(text, entry, !entry.task.checked));
          const after = readNote(ticked).entries;
          assert.deepEqual(
            after.map(({ tag, range }) => ({ tag, range })),
            before.map(({ tag, range }) => ({ tag, range })),
          );
          assert.equal(after[index]?.task?.checked, !entry.task.checked);
          written += 1;
        }
        const longer = applyTextEdits(text, addFieldEdits(text, entry, { name: 'with', text: 'wren' }));
        const same = readNote(longer).entries[index];
        assert.equal(same?.tag, entry.tag);
        assert.ok(same && fieldTokensOf(longer, same).length > 0);
        assert.equal(readNote(longer).entries.length, before.length);
      }),
      { ...fuzzRuns, seed: fuzzRuns.seed + 1 },
    );
    assert.ok(written > 100, `${written} written`);
  });
});
