import assert from 'node:assert/strict';
import fc from 'fast-check';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { addDays } from '../../src/notation/time/iso-date';
import { checkJournal } from '../../src/training/check-journal';
import { checkWeek } from '../../src/training/check-week';
import type { Finding } from '../../src/training/finding';
import { goalProgress } from '../../src/training/goal-progress';
import { weeksOf } from '../../src/training/weeks-of-journal';
import { date, week } from './dates';
import { journalFromNotes } from './journal-from-text';

const today = date('2026-02-25');
const zone = 'Europe/Berlin';

type Notes = Readonly<Record<string, string>>;

/** Texts that break many rules at once, with dates to shift in names and lines. */
const plan = [
  '- #goal low-split from:2026-01-12 by:2026-06-14 "Front split"',
  '- #metric gap from:14cm to:0cm',
  '- #need flexibility 2/week 75min 7/10 gap:48h',
  '- #goal hoop-drop',
  '- #need skill 1/week 8/10 gap:7d max:1/week with:coach',
  '',
  '# Rules',
  '',
  '- #need recovery 1/week',
  '- #rule strength gap:30h max:2/week min:1/week',
  '- #rule any cap:2h gap:4h',
  '- #rule shoulders gap:24h',
  '- #routine press strength 60min regions:shoulders,wrists',
  '- #free mon tue thu fri 17:00-21:00',
  '- #free sat 09:00-12:00 where:studio',
  '- #busy 2026-02-28',
  '- #busy 2026-02-24 17:00-18:00',
].join('\n');

const line = fc
  .record({
    box: fc.constantFrom('- [ ] ', '- [x] ', '- '),
    kind: fc.constantFrom('flexibility', 'strength', 'skill', 'recovery', 'conditioning'),
    time: fc.constantFrom('', ' 07:00', ' 18:00', ' 18:30-19:45', ' 23:00-00:30'),
    length: fc.constantFrom('', ' 45min', ' 75min'),
    rating: fc.constantFrom('', ' 5/10', ' 8/10'),
    more: fc.constantFrom(
      '',
      ' for:low-split',
      ' for:hoop-drop',
      ' for:planche',
      ' routine:press',
      ' with:coach',
      ' skipped:ill',
    ),
  })
  .map(
    ({ box, kind, time, length, rating, more }) => `${box}#session ${kind}${time}${length}${rating}${more}`,
  );

const logged = fc.constantFrom(
  '- #pain shoulders 5/10',
  '- #pain shoulders clear',
  '- #measure low-split gap 9cm',
  '- #measure low-split gap 9deg',
  '- [ ] #session strength 18:00 moved:2026-02-27',
  '- [ ] #sesion skill',
);

/** Journals of up to eight days in three weeks around today. */
const journals: fc.Arbitrary<Notes> = fc
  .dictionary(
    fc.integer({ min: -10, max: 10 }).map((days) => `${addDays(today, days)}.md`),
    fc
      .array(fc.oneof({ weight: 4, arbitrary: line }, logged), { minLength: 1, maxLength: 3 })
      .map((lines) => lines.join('\n')),
    { maxKeys: 8 },
  )
  .map((days) => ({ 'journal.md': plan, ...days }));

function check(notes: Notes, day = today): readonly Finding[] {
  return checkJournal(journalFromNotes(notes), { today: day, zone });
}

/** Every date and week in a text, so many weeks later. */
function shiftDates(text: string, weeks: number): string {
  return text
    .replace(/\d{4}-\d{2}-\d{2}/g, (written) => addDays(date(written), 7 * weeks))
    .replace(
      /(\d{4})-W(\d{2})/g,
      (_, year, number) => `${year}-W${String(Number(number) + weeks).padStart(2, '0')}`,
    );
}

describe('the checks of a whole journal', () => {
  it('give findings in order of note, place and code', () => {
    fc.assert(
      fc.property(journals, (notes) => {
        const found = check(notes);
        for (const [index, finding] of found.entries()) {
          const before = found[index - 1];
          if (!before || before.note !== finding.note) continue;
          assert.ok(
            before.range.start < finding.range.start ||
              (before.range.start === finding.range.start && before.range.end <= finding.range.end),
          );
        }
        const inNotes = found.map((finding) => finding.note);
        assert.deepEqual(inNotes, [...inNotes].sort());
      }),
      { seed: 20260225, numRuns: 40 },
    );
  });

  it('give the same whatever the order in which the notes were read', () => {
    fc.assert(
      fc.property(journals, fc.integer(), (notes, seed) => {
        const shuffled = Object.entries(notes)
          .map(([path, text], index) => ({ path, text, key: Math.sin(seed + index * 7.1) }))
          .sort((one, other) => one.key - other.key);
        const reordered = new JournalIndex();
        for (const { path, text } of shuffled) reordered.replace(openNote(path, text));
        assert.deepEqual(checkJournal(reordered, { today, zone }), check(notes));
      }),
      { seed: 20260225, numRuns: 40 },
    );
  });

  it('shift with the journal and with today by whole weeks, dates in sentences and facts included', () => {
    fc.assert(
      // Up to four weeks: later, Berlin's clocks change, and an hour more or less is a difference to be told.
      fc.property(journals, fc.integer({ min: -4, max: 3 }), (notes, weeks) => {
        const shifted = Object.fromEntries(
          Object.entries(notes).map(([path, text]) => [shiftDates(path, weeks), shiftDates(text, weeks)]),
        );
        const expected = JSON.parse(shiftDates(JSON.stringify(check(notes)), weeks));
        assert.deepEqual(check(shifted, addDays(today, 7 * weeks)), expected);
      }),
      { seed: 20260225, numRuns: 40 },
    );
  });

  it('stand on characters that are in the note, and so do the related places', () => {
    fc.assert(
      fc.property(journals, (notes) => {
        for (const finding of check(notes)) {
          for (const { note, range } of [finding, ...finding.related]) {
            assert.ok(range.start >= 0 && range.start < range.end && range.end <= (notes[note]?.length ?? 0));
          }
        }
      }),
      { seed: 20260225, numRuns: 40 },
    );
  });

  it('fill every place of their sentences', () => {
    fc.assert(
      fc.property(journals, (notes) => {
        for (const finding of check(notes)) {
          for (const { template, values } of [
            finding.message,
            ...finding.related.map((place) => place.message),
          ]) {
            for (const [, place] of template.matchAll(/\{(\d+)\}/g))
              assert.ok(Number(place) < values.length, template);
          }
        }
      }),
      { seed: 20260225, numRuns: 40 },
    );
  });

  it('look at a single week as at the same week of all', () => {
    fc.assert(
      fc.property(journals, (notes) => {
        const journal = journalFromNotes(notes);
        const weeks = weeksOf(journal, today);
        const single = weeks.flatMap((one) => checkWeek(journal, one, { today, zone }));
        const all = checkJournal(journal, { today, zone });
        for (const finding of single) {
          assert.ok(all.some((one) => JSON.stringify(one) === JSON.stringify(finding)));
        }
        const rest = checkJournal(journal, { today, zone, weeks: [] });
        assert.equal(all.length, single.length + rest.length);
      }),
      { seed: 20260225, numRuns: 25 },
    );
  });
});

describe('the weeks of a journal', () => {
  it('are those with day notes, those to which a session was moved, and that of today', () => {
    const journal = journalFromNotes({
      'goals.md': '- #goal low-split by:2030-01-01',
      '2026-01-05.md': '- [ ] #session skill moved:2026-04-20',
      '2026-02-03.md': '',
    });
    assert.deepEqual(weeksOf(journal, today), ['2026-W02', '2026-W06', '2026-W09', '2026-W17']);
  });

  it('do not fill the centuries up to a mistyped year', () => {
    const journal = journalFromNotes({ '0206-02-24.md': '- [x] #session skill', '9206-02-24.md': '' });
    assert.deepEqual(weeksOf(journal, today), ['0206-W09', '2026-W09', '9206-W08']);
  });
});

describe('a journal at the ends of the calendar', () => {
  for (const day of ['0000-01-01', '0001-01-01', '9999-12-27', '9999-12-31']) {
    it(`is checked with a note of ${day}`, () => {
      const notes = {
        'journal.md': '- #need skill 1/week gap:7d\n- #goal g\n- #need strength 1/week',
        [`${day}.md`]:
          '- [ ] #session skill 23:00-01:00\n- [ ] #session strength 23:30 60min for:g\n- #pain hip 3/10',
      };
      assert.ok(check(notes).length > 0);
      assert.ok(goalProgress(journalFromNotes(notes), 'g', { today }));
    });
  }
});

describe('an empty journal', () => {
  it('has nothing to tell', () => {
    assert.deepEqual(check({}), []);
    assert.deepEqual(checkWeek(journalFromNotes({}), week('2026-W09'), { today, zone }), []);
    assert.deepEqual(check({ '2026-02-25.md': '', 'words.md': '# Words\n\nand more of them' }), []);
  });
});
