import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { isoDate } from '../../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf, mondayOf } from '../../../src/notation/time/iso-week';
import { type CopyWeeksOptions, copyChanges, copyWeeks } from '../../../src/planning/coach/copy-weeks';
import { fillMessage } from '../../../src/training/finding';
import { assertNoneBroken } from '../broken-rules';
import { applied, changed, date, journalOf, type Notes } from '../journal-of';

/** A Wednesday; the weeks that are copied to begin on 2 March. */
const today = date('2026-02-25');
const thisWeek = isoWeekOf(today);
const to = addWeeks(thisWeek, 1);

/** Two flexibility sessions a day apart, and a strength session with the athlete's own partner. */
const heron: Notes = {
  'heron/journal.md': '#athlete "Heron"\n- #kind mount like:skill\n- #rule flexibility gap:24h\n',
  'heron/plan.md':
    '- #routine bridge flexibility 60min regions:lower-back\n  - cat and cow\n  - bridge, 5 x 15 s\n',
  'heron/2026-02-23.md':
    '- [x] #session flexibility 18:30 60min 7/10 routine:bridge for:bridge -- hurt my pride\n',
  'heron/2026-02-24.md': '- [x] #session flexibility 18:30 60min 7/10 routine:bridge\n',
  'heron/2026-02-26.md': '- [ ] #session mount 18:30 45min 5/10 with:juno where:attic\n',
  'heron/2026-02-27.md': '- [ ] #session strength skipped:travel\n',
};

const wren: Notes = {
  'wren/journal.md': '#athlete "Wren"\n- #rule flexibility gap:72h\n- #need flexibility 1/week 90min 4/10\n',
  'wren/hours.md':
    '- #free monday 10:00-12:00\n- #free tuesday 10:00-12:00\n- #free thursday 10:00-12:00\n- #free saturday 10:00-12:00\n',
};

function options(notes: Notes, count = 1): CopyWeeksOptions {
  return { today, zone: 'UTC', from: journalOf(notes, 'heron'), firstWeek: thisWeek, count, to };
}

const copied = (from: Notes, into: Notes) => copyWeeks(journalOf(into, 'wren'), options(from));

describe('copying weeks to another athlete', () => {
  it('places the sessions by the hours and gaps of the receiving athlete, with the routine that they need', () => {
    const plan = copied(heron, wren);
    assert.deepEqual(
      plan.weeks.map(({ from, week, sessions, placed }) => [
        from,
        week,
        sessions,
        placed.map(({ date: day, start, minutes, kind }) => [day, start, minutes, kind]),
      ]),
      [
        [
          '2026-W09',
          '2026-W10',
          3,
          [
            ['2026-03-02', 600, 60, 'flexibility'],
            ['2026-03-03', 600, 45, 'skill'],
            ['2026-03-07', 600, 60, 'flexibility'],
          ],
        ],
      ],
    );
    assert.deepEqual([plan.routines, plan.routinesTaken], [['bridge'], []]);
    const notes = changed(wren, plan.changes);
    assert.deepEqual(Object.keys(notes).sort(), [
      'wren/2026-03-02.md',
      'wren/2026-03-03.md',
      'wren/2026-03-07.md',
      'wren/journal.md',
    ]);
    assert.equal(
      notes['wren/2026-03-02.md'],
      '# Monday, 2026-03-02\n\n- [ ] #session flexibility 10:00 60min 7/10 routine:bridge\n  - cat and cow\n  - bridge, 5 x 15 s\n',
    );
    assert.match(
      notes['wren/journal.md'] ?? '',
      /\n- #routine bridge flexibility 60min regions:lower-back\n/,
    );
  });

  it('leaves behind goals, remarks, and the names that the receiving journal does not know', () => {
    const text = JSON.stringify(copied(heron, wren).changes);
    assert.doesNotMatch(text, /for:|pride|juno|attic|mount/);
    const known = { ...wren, 'wren/2026-02-20.md': '- [x] #session skill 10:00 45min with:juno\n' };
    const hours = {
      ...known,
      'wren/hours.md': '- #free monday 10:00-12:00\n- #free thursday 10:00-12:00 with:juno\n',
    };
    assert.match(
      JSON.stringify(copied(heron, hours).changes),
      /2026-03-05.*#session skill 10:00 45min 5\/10 with:juno/,
    );
  });

  it('says what does not fit, and why', () => {
    const few = { ...wren, 'wren/hours.md': '- #free monday 10:00-12:00\n- #free tuesday 10:00-12:00\n' };
    const [week] = copied(heron, few).weeks;
    assert.deepEqual(
      [week?.placed.map(({ kind }) => kind), week?.leftOut.map(({ kind }) => kind)],
      [['flexibility', 'skill'], ['flexibility']],
    );
    assert.match(fillMessage(week?.leftOut[0]?.why ?? { template: '', values: [] }), /\S/);
  });

  it('adds nothing the second time, and writes what is kept of it only', () => {
    const into = journalOf(wren, 'wren');
    const plan = copyWeeks(into, options(heron));
    const once = applied(wren, plan.changes);
    assert.deepEqual(copied(heron, once).changes, []);
    const [first] = plan.weeks[0]?.placed ?? [];
    assert(first);
    assert.deepEqual(Object.keys(changed(wren, copyChanges(into, options(heron), [first]))).sort(), [
      'wren/2026-03-02.md',
      'wren/journal.md',
    ]);
    assert.deepEqual(copyChanges(into, options(heron), []), []);
  });

  it('writes the exercises of a routine of the same name that stands there already', () => {
    const own = { ...wren, 'wren/plan.md': '- #routine bridge flexibility 60min\n  - only the wall\n' };
    const plan = copied(heron, own);
    assert.deepEqual([plan.routines, plan.routinesTaken], [[], ['bridge']]);
    assert.match(JSON.stringify(plan.changes), /routine:bridge\\n {2}- only the wall/);
  });

  const anySession = fc.record({
    day: fc.integer({ min: 0, max: 13 }),
    kind: fc.constantFrom('flexibility', 'strength', 'skill', 'conditioning', 'recovery'),
    minutes: fc.constantFrom(30, 60, 90),
    effort: fc.integer({ min: 2, max: 9 }),
    box: fc.constantFrom('[ ]', '[x]'),
  });
  const anyHours = fc.subarray(
    ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'],
    { minLength: 1, maxLength: 3 },
  );

  it('breaks no rule of the receiving athlete, changes nothing that stands, and accounts for every session', () => {
    let placedInAll = 0;
    let leftInAll = 0;
    fc.assert(
      fc.property(fc.array(anySession, { maxLength: 9 }), anyHours, (sessions, hours) => {
        const from: Record<string, string> = { 'heron/journal.md': '' };
        for (const { day, kind, minutes, effort, box } of sessions) {
          const path = `heron/${isoDate(mondayOf(thisWeek) + day)}.md`;
          from[path] = `${from[path] ?? ''}- ${box} #session ${kind} ${minutes}min ${effort}/10\n`;
        }
        const into: Notes = {
          'wren/journal.md': '- #rule flexibility gap:72h\n- #rule any max:4/week\n',
          'wren/2026-03-03.md': '- [ ] #session strength 18:00 60min 8/10\n  - my own words\n',
          'wren/hours.md': hours.map((day) => `- #free ${day} 17:00-20:00\n`).join(''),
        };
        const plan = copyWeeks(journalOf(into, 'wren'), options(from, 2));
        const after = applied(into, plan.changes);
        const weeks = [0, 1, 2, 3].map((offset) => addWeeks(to, offset - 1));
        assertNoneBroken(into, after, weeks, { today, zone: 'UTC' });
        for (const [path, text] of Object.entries(into))
          assert.ok((after[path] ?? '').startsWith(text.trimEnd()));
        for (const week of plan.weeks) {
          const { placed, leftOut } = week;
          assert.ok(placed.length + leftOut.length <= week.sessions);
          // The one that stands may count for one of them.
          assert.ok(placed.length + leftOut.length >= week.sessions - (week.week === to ? 1 : 0));
          placedInAll += placed.length;
          leftInAll += leftOut.length;
        }
      }),
      { seed: 20260225, numRuns: 40 },
    );
    assert.ok(placedInAll > 20 && leftInAll > 5, `${placedInAll} placed, ${leftInAll} left out`);
  });
});
