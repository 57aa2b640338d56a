import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { allOf, day, days, indexOf, sessionsOf } from './index-of';

const nothing = { days: new Set(), plan: false };

describe('a changed note', () => {
  it('touches its day and the days to which it moves sessions, before and now', () => {
    const journal = new JournalIndex();
    const change = (text: string) => journal.replace(openNote('2026-02-24.md', text));
    assert.deepEqual(change('- #session skill\n'), { days: days('2026-02-24'), plan: false });
    assert.deepEqual(change('- #session skill moved:2026-02-26\n'), {
      days: days('2026-02-24', '2026-02-26'),
      plan: false,
    });
    assert.deepEqual(change('- #session skill moved:2026-03-05\n'), {
      days: days('2026-02-24', '2026-02-26', '2026-03-05'),
      plan: false,
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-26'), []);
    assert.deepEqual(sessionsOf(journal, '2026-03-05'), ['2026-03-05 skill from 2026-02-24']);
    assert.deepEqual(journal.remove('2026-02-24.md'), {
      days: days('2026-02-24', '2026-03-05'),
      plan: false,
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-24', '2026-03-05'), []);
  });

  it('changes nothing when its text is the same, or when it was not there', () => {
    const journal = indexOf({ '2026-02-24.md': '- #session skill\n' });
    assert.deepEqual(journal.replace(openNote('2026-02-24.md', '- #session skill\n')), nothing);
    assert.deepEqual(journal.remove('2026-02-25.md'), nothing);
    assert.deepEqual(journal.removeBelow('log'), nothing);
  });

  it('touches the plan when a line that plans is added, altered, shifted or removed', () => {
    const journal = new JournalIndex();
    const change = (text: string) => journal.replace(openNote('goals.md', text)).plan;
    assert.equal(change('# Goals\n'), false);
    assert.equal(change('# Goals\n\n#rule any max:8/week\n'), true);
    assert.equal(change('# Goals\n\n#rule any max:7/week\n'), true);
    assert.equal(change('# My goals\n\n#rule any max:7/week\n'), true);
    assert.equal(change('# My goals\n\n#rule any max:7/week\n\nWords below.\n'), false);
    assert.equal(journal.plan.rules[0]?.max?.count, 7);
    assert.equal(journal.remove('goals.md').plan, true);
    assert.deepEqual(journal.plan.rules, []);
  });

  it('leaves the plan alone when it only logs', () => {
    const journal = indexOf({ 'goals.md': '#goal split\n#metric gap\n', '2026-02-24.md': '' });
    const { plan } = journal;
    journal.replace(openNote('2026-02-24.md', '- [x] #session skill\n- #measure split 9cm\n'));
    assert.equal(journal.plan, plan);
    journal.replace(openNote('2026-02-24.md', '- [x] #session skill\n- #event 2026-03-01 "Show"\n'));
    assert.notEqual(journal.plan, plan);
  });

  it('is seen in answers that were given before', () => {
    const journal = indexOf({
      'goals.md': '#goal split\n#metric gap\n',
      '2026-02-24.md': '- #session skill 18:30 moved:2026-02-26\n- #measure split 9cm\n',
      '2026-02-26.md': '- #session strength\n',
    });
    const answers = () => [
      ...sessionsOf(journal, '2026-02-26'),
      ...journal.measurements('split').map(({ quantity }) => quantity.value),
      ...journal.measurements('split', 'gap').map(({ quantity }) => quantity.value),
      ...journal.names('kind'),
    ];
    const moved = '2026-02-26 at 18.5 skill from 2026-02-24';
    assert.deepEqual(answers(), [moved, '2026-02-26 strength', 9, 9, 'skill', 'strength']);
    journal.replace(openNote('2026-02-24.md', '- #session hoop moved:2026-02-26\n- #measure split 8cm\n'));
    const other = '2026-02-26 hoop from 2026-02-24';
    assert.deepEqual(answers(), [other, '2026-02-26 strength', 8, 8, 'hoop', 'strength']);
    journal.replace(openNote('goals.md', '#goal split\n#metric gap\n#metric angle\n'));
    assert.deepEqual(answers(), [other, '2026-02-26 strength', 8, 'hoop', 'strength']);
    journal.replace(openNote('2026-02-24.md', '- #session hoop\n'));
    assert.deepEqual(answers(), ['2026-02-26 strength', 'hoop', 'strength']);
  });

  it('keeps what was worked out for other days', () => {
    const journal = indexOf({
      '2026-02-24.md': '- #session skill\n',
      '2026-02-25.md': '- #session skill\n',
    });
    const other = () => journal.sessions(day('2026-02-25'), day('2026-02-25'))[0];
    const before = other();
    journal.replace(openNote('2026-02-24.md', '- #session strength\n'));
    assert.equal(other(), before);
  });
});

describe('a folder that goes', () => {
  it('takes its notes with it, at any depth, and no others', () => {
    const journal = indexOf({
      'log/2026-02-24.md': '- #session skill\n',
      'log/deep/2026-02-25.md': '- #session skill\n- #event 2026-03-01 "Show"\n',
      'logs/2026-02-26.md': '- #session skill\n',
    });
    assert.deepEqual(journal.removeBelow('log'), { days: days('2026-02-24', '2026-02-25'), plan: true });
    assert.deepEqual(
      [...journal.notes()].map(({ path }) => path),
      ['logs/2026-02-26.md'],
    );
    assert.deepEqual(journal.span(), { first: day('2026-02-26'), last: day('2026-02-26') });
    assert.equal(journal.removeBelow('').days.size, 1);
    assert.equal(journal.span(), undefined);
  });
});

describe('the notes of a journal', () => {
  it('are found by path, by day, and all in order', () => {
    const journal = indexOf({
      'goals.md': '',
      '2026-02-24 evening.md': '',
      '2026-02-24.md': '',
      '2026-02-20.md': '',
    });
    assert.deepEqual(
      journal.notesOf(day('2026-02-24')).map(({ path }) => path),
      ['2026-02-24.md', '2026-02-24 evening.md'],
    );
    assert.deepEqual(
      [...journal.notes()].map(({ path }) => path),
      ['2026-02-20.md', '2026-02-24.md', '2026-02-24 evening.md', 'goals.md'],
    );
    assert.equal(journal.note('goals.md')?.name.kind, 'other');
    assert.equal(journal.note('else.md'), undefined);
    assert.deepEqual(journal.span(), { first: day('2026-02-20'), last: day('2026-02-24') });
  });

  it('may hold anything: nothing, 5 MB, a lone carriage return, no final line ending', () => {
    const long = 'Words and more words, #not one of them a tag.\n'.repeat(120_000);
    assert(long.length > 5_000_000);
    const journal = indexOf({
      '2026-02-20.md': '',
      '2026-02-21.md': long,
      '2026-02-22.md': '# Day\r\r- [x] #session strength 18:30\r- [x] #session skill 20:00\r',
      '2026-02-23.md': '- [x] #session recovery',
      '2026-02-24.md': '```\n- [x] #session skill\n',
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-20', '2026-02-24'), [
      '2026-02-22 at 18.5 strength',
      '2026-02-22 at 20 skill',
      '2026-02-23 recovery',
    ]);
  });
});

const paths = [
  'journal.md',
  'goals.md',
  'goals (conflicted copy).md',
  '2026-W09.md',
  '2026-02-24.md',
  '2026-02-24 (conflicted copy).md',
  'log/2026-02-24.md',
  'log/2026-02-25.md',
  'log/2026-02-26.md',
  '2026-02-30.md',
];

const lines = [
  '- [ ] #session skill 18:30',
  '- [x] #session skill 18:30 7/10 -- words',
  '- [ ] #session skill',
  '- [x] #session skill 5/10',
  '- [ ] #session flexibility 09:00 moved:2026-02-26',
  '- [ ] #session flexibility 09:00 moved:2026-02-24',
  '- [ ] #session flexibility moved:2026-02-25 skipped:ill',
  '- [ ] #session hoop with:juno where:studio',
  '- #measure split 9cm',
  '- #measure split gap 8cm',
  '- #measure hold 20s',
  '- #sore back 3/10',
  '- #pain back clear',
  '#win held it',
  '#goal split "One"',
  '#goal split "Two"',
  '#goal',
  '#metric gap from:14cm to:0cm',
  '#metric lift',
  '- [x] #step first metric:gap',
  '- #need flexibility 2/week',
  '#routine legs flexibility regions:back',
  '#rule any max:3/week',
  '#kind hoop like:strength',
  '#zone Europe/Lisbon',
  '#athlete "Heron"',
  '# Heading',
  'Words',
];

const text = fc
  .array(fc.constantFrom(...lines), { maxLength: 5 })
  .map((chosen) => chosen.map((line) => `${line}\n`).join('\n'));

type Step =
  | { readonly do: 'replace'; readonly path: string; readonly text: string }
  | { readonly do: 'remove'; readonly path: string }
  | { readonly do: 'removeBelow'; readonly folder: string }
  | { readonly do: 'look' };

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({ do: fc.constant('replace' as const), path: fc.constantFrom(...paths), text }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('remove' as const), path: fc.constantFrom(...paths) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('removeBelow' as const), folder: fc.constantFrom('', 'log') }),
  },
  { weight: 5, arbitrary: fc.record({ do: fc.constant('look' as const) }) },
);

describe('an index after any changes', () => {
  it('equals one that is built afresh, whatever was looked at meanwhile', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const journal = new JournalIndex();
        const texts = new Map<string, string>();
        for (const one of steps) {
          if (one.do === 'look') {
            allOf(journal);
          } else if (one.do === 'replace') {
            journal.replace(openNote(one.path, one.text));
            texts.set(one.path, one.text);
          } else if (one.do === 'remove') {
            journal.remove(one.path);
            texts.delete(one.path);
          } else {
            journal.removeBelow(one.folder);
            for (const path of [...texts.keys()]) {
              if (one.folder === '' || path.startsWith('log/')) texts.delete(path);
            }
          }
        }
        // Another order of arrival as well: nothing may depend on it.
        const afresh = indexOf(Object.fromEntries([...texts].reverse()));
        assert.deepEqual(allOf(journal), allOf(afresh));
      }),
      { seed: 2026, numRuns: 200 },
    );
  });

  it('has told of every day and of the plan wherever an answer differs', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 15 }), step, (steps, last) => {
        const journal = new JournalIndex();
        const take = (one: Step) => {
          if (one.do === 'replace') return journal.replace(openNote(one.path, one.text));
          if (one.do === 'remove') return journal.remove(one.path);
          if (one.do === 'removeBelow') return journal.removeBelow(one.folder);
          return nothing;
        };
        for (const one of steps) take(one);
        const first = day('2026-02-20');
        const answers = () =>
          [0, 1, 2, 3, 4, 5, 6, 7, 8].map((offset) => {
            const number = first + offset;
            return JSON.stringify([
              journal.sessions(number, number),
              journal.duplicateSessions(number, number),
              journal.measurementsBetween(number, number).map(({ metric: _metric, ...reading }) => reading),
              journal.bodyReports(number, number),
              journal.wins(number, number),
            ]);
          });
        const planText = () =>
          JSON.stringify([...journal.plan.goals], undefined, 1) + JSON.stringify(journal.plan);
        const before = answers();
        const planBefore = planText();
        const change = take(last);
        const after = answers();
        for (const [offset, answer] of after.entries()) {
          if (answer !== before[offset])
            assert(change.days.has(first + offset), `day ${offset} changed untold`);
        }
        if (planText() !== planBefore) assert.equal(change.plan, true);
      }),
      { seed: 2026, numRuns: 200 },
    );
  });
});
