import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Session } from '../../src/journal/journal';
import { dayNumber } from '../../src/notation/time/iso-date';
import {
  changeSessionTime,
  moveSession,
  rateSession,
  skipSession,
  tickSession,
  turnIntoRecovery,
} from '../../src/planning/session-changes';
import { changed, date, journalOf, type Notes } from './journal-of';

const from = '2026-02-24.md';
const to = '2026-02-26.md';
const target = date('2026-02-26');

const fields = fc.constantFrom(
  'flexibility 18:30 75min 7/10 for:split -- hips level',
  'skill 18:30-19:45 with:wren',
  'strength',
  'skill 07:00 skipped:work — a dash',
  'flexibility\t18:30\t60min  ',
);
/** A session as it can stand in a list, in a list of a list, with a tab, in a quotation, or in plain text. */
const session = fc
  .tuple(
    fields,
    fc.constantFrom('- [ ] ', '* [x] ', '+ ', '1. [ ] ', '  - [ ] ', '', '> - [ ] ', '- evening\n\t- [ ] '),
    fc.constantFrom([], ['warm-up'], ['- warm-up', '  - slowly'], ['- a', '', '- b'], ['```', 'code', '```']),
  )
  .map(([line, marker, body]) => {
    const inside = marker.startsWith('>') ? '>   ' : marker.includes('\t') ? '\t\t' : '     ';
    return [`${marker}#session ${line}`, ...(marker === '' ? [] : body.map((one) => inside + one))].join(
      '\n',
    );
  });
const words = fc.constantFrom('', '# Day', 'Words.', '- #sore hips 2/10', '---', '<!-- note -->', '    code');
const note = fc
  .tuple(fc.array(words, { maxLength: 3 }), session, fc.array(words, { maxLength: 3 }), fc.boolean())
  .map(([before, own, after, final]) => [...before, '', own, '', ...after].join('\n') + (final ? '\n' : ''));
const ending = fc.constantFrom('\n', '\r\n', '\r');

function first(notes: Notes): Session | undefined {
  const day = dayNumber(date('2026-02-24'));
  return journalOf(notes).sessions(day, day)[0];
}

/** Whether `longer` is `text` with characters added. */
function holds(longer: string, text: string): boolean {
  let at = 0;
  for (const character of longer) if (character === text[at]) at += 1;
  return at === text.length;
}

const endingsOf = (text: string) => [...new Set(text.match(/\r\n|\n|\r/g))];

describe('changes of a session in any note', function () {
  this.timeout(120_000);
  it('a move adds to both notes and takes away no more than a reason; line endings stay each note’s own', () => {
    let moves = 0;
    fc.assert(
      fc.property(note, ending, fc.option(note, { nil: undefined }), ending, (text, one, other, two) => {
        const notes: Notes = {
          [from]: text.replaceAll('\n', one),
          ...(other === undefined ? {} : { [to]: other.replaceAll('\n', two) }),
        };
        const journal = journalOf(notes);
        const found = first(notes);
        if (!found) return;
        moves += 1;
        const after = { ...notes, ...changed(notes, moveSession(journal, found, { date: target })) };
        const source = after[from] ?? assert.fail();
        const arrived = after[to] ?? assert.fail();
        assert.ok(holds(source, (notes[from] ?? '').replace(/[ \t]+skipped:work/, '')));
        assert.ok(holds(arrived, notes[to] ?? ''));
        assert.deepEqual(endingsOf(source), endingsOf(notes[from] ?? ''));
        if (notes[to] !== undefined && endingsOf(notes[to]).length > 0)
          assert.deepEqual(endingsOf(arrived), endingsOf(notes[to]));
        const day = dayNumber(target);
        const standing = journalOf(after).sessions(day, day);
        const before = journal.sessions(day, day);
        assert.equal(standing.length, before.length + 1);
        const moved = standing.filter(
          ({ kind, entry }) => kind === found.kind && !entry.moved && !entry.skipped,
        );
        assert.ok(
          moved.some(({ entry, movedFrom }) => movedFrom === undefined && entry.task?.checked === false),
        );
        assert.equal(first(after)?.entry.moved?.value, target);
      }),
      { seed: 24, numRuns: 200 },
    );
    assert.ok(moves > 150, `${moves} moves`);
  });

  it('a small change touches the line of the session only, and makes it read as asked', () => {
    fc.assert(
      fc.property(note, ending, (text, one) => {
        const notes: Notes = { [from]: text.replaceAll('\n', one) };
        const journal = journalOf(notes);
        const found = first(notes);
        if (!found) return;
        const whole = notes[from] ?? '';
        const { range, itemRange } = found.entry;
        const cases = [
          [tickSession(journal, found, true), (now: Session) => now.entry.task?.checked === true],
          [tickSession(journal, found, false), (now: Session) => now.entry.task?.checked === false],
          [skipSession(journal, found, 'ill'), (now: Session) => now.entry.skipped?.value === 'ill'],
          [rateSession(journal, found, 4), (now: Session) => now.entry.rating?.value === 4],
          [changeSessionTime(journal, found, 400), (now: Session) => now.entry.span?.value.start === 400],
          [
            turnIntoRecovery(journal, found),
            (now: Session) => now.kind === 'recovery' && now.entry.rating?.value === 2,
          ],
        ] as const;
        for (const [changes, isAsAsked] of cases) {
          const after = { ...notes, ...changed(notes, changes) };
          const line = after[from] ?? '';
          assert.equal(line.slice(0, itemRange.start), whole.slice(0, itemRange.start));
          assert.ok(line.endsWith(whole.slice(range.end)));
          const now = first(after);
          assert.ok(now && isAsAsked(now), line);
        }
      }),
      { seed: 25, numRuns: 100 },
    );
  });
});
