import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { fillMessage } from '../../../src/training/finding';
import { PublishedFindings } from '../../../src/training/published-findings';
import { athleteFacts } from '../../../src/training/roster/athlete-facts';
import {
  type Athlete,
  compareRows,
  type RosterRow,
  rosterOf,
  rosterRow,
} from '../../../src/training/roster/roster';
import { checkContext } from '../../../src/training/week-under-check';
import { weeksAround } from '../../../src/training/weeks-around';
import { date } from '../dates';
import { journalFromNotes } from '../journal-from-text';

/** A Wednesday. */
const today = date('2026-02-25');

function athlete(name: string, notes: Readonly<Record<string, string>>, id = name): Athlete {
  const journal = journalFromNotes(notes);
  const published = new PublishedFindings(journal);
  published.refresh({ today, zone: 'UTC', weeks: weeksAround(today), openNotes: new Set() });
  return {
    id,
    name,
    plan: journal.plan,
    facts: athleteFacts(checkContext(journal, { today, zone: 'UTC' })),
    findings: published.all,
  };
}

const reasonsOf = (notes: Readonly<Record<string, string>>) =>
  rosterRow(athlete('Wren', notes)).reasons.map(({ message }) => fillMessage(message));

/** A session done on every day of the two weeks before, so that nobody is silent. */
const trained = { '2026-02-24.md': '- [x] #session flexibility 18:30 60min 5/10\n' };

describe('the facts of an athlete', () => {
  const facts = (notes: Readonly<Record<string, string>>) => athlete('Wren', notes).facts;

  it('hold the last day on which something was logged, not the last note that was written ahead', () => {
    const { lastLog } = facts({
      '2026-02-20.md': '# Friday\n\n- [x] #session skill 18:30 45min\n',
      '2026-02-23.md': '- [ ] #session skill 18:30 45min\n',
      '2026-02-27.md': '- [ ] #session skill 18:30 45min\n',
    });
    assert.deepEqual(lastLog, {
      date: '2026-02-20',
      daysAgo: 5,
      place: { note: '2026-02-20.md', range: { start: 16, end: 42 } },
    });
  });

  it('count a session left out with its reason, a reading, soreness, pain and a win as logged', () => {
    for (const line of [
      '- [ ] #session skill skipped:ill',
      '- [ ] #session skill moved:2026-02-26',
      '- #measure low-split gap 9cm',
      '- #sore hips 3/10',
      '- #pain left-wrist 3/10',
      '- #win held it',
    ])
      assert.equal(facts({ '2026-02-22.md': `${line}\n` }).lastLog?.date, '2026-02-22', line);
    assert.equal(facts({ '2026-02-22.md': '- #busy 2026-02-22\n' }).lastLog, undefined);
  });

  it('count what is kept of what stands in this week', () => {
    const { week } = facts({
      '2026-02-23.md': '- [x] #session skill 18:30 45min\n',
      '2026-02-24.md': '- [ ] #session skill skipped:travel\n',
      '2026-02-25.md': '- [ ] #session skill 18:30 45min\n',
      '2026-03-02.md': '- [ ] #session skill 18:30 45min\n',
    });
    assert.deepEqual([week.done, week.planned, week.skipped], [1, 2, 1]);
  });

  it('hold the nearest day ahead, of an event or of an open goal; of one day the event', () => {
    const next = (plan: string) => {
      const found = facts({ 'plan.md': plan }).next;
      return found && [found.is, found.name, found.date, found.days];
    };
    const goals =
      '- [x] #goal over by:2026-02-26\n- #goal past by:2026-02-20\n- #goal bridge by:2026-03-01 "Bridge"\n';
    assert.deepEqual(next(goals), ['goal', 'Bridge', '2026-03-01', 4]);
    assert.deepEqual(next(`${goals}\n- #event 2026-03-01 "spring show"\n`), [
      'event',
      'spring show',
      '2026-03-01',
      4,
    ]);
    assert.deepEqual(next('- #event 2026-02-25 "today"\n'), ['event', 'today', '2026-02-25', 0]);
    assert.equal(next('- #event 2026-02-24 "yesterday"\n'), undefined);
  });
});

describe('the reasons for a word', () => {
  it('are none when all is well', () => {
    assert.deepEqual(reasonsOf(trained), []);
  });

  it('are pain that is not cleared, first of all', () => {
    assert.deepEqual(
      reasonsOf({
        '2026-02-20.md': '- #pain left-wrist 3/10\n- #pain lower-back\n- #pain hips 6/10\n',
        '2026-02-22.md': '- #pain hips clear\n',
        ...trained,
      }),
      ['Open pain: lower-back, noted on 2026-02-20', 'Open pain: left-wrist 3/10, noted on 2026-02-20'],
    );
  });

  it('are seven days without anything logged, and a journal in which nothing ever was', () => {
    assert.deepEqual(reasonsOf({ '2026-02-19.md': '- #win held it\n' }), []);
    assert.deepEqual(reasonsOf({ '2026-02-18.md': '- #win held it\n' }), ['Nothing logged for 7 days']);
    assert.deepEqual(reasonsOf({ 'journal.md': '' }), ['Nothing logged yet']);
  });

  it('are fewer sessions done than usual, as the finding counts them', () => {
    const notes: Record<string, string> = {};
    for (let day = 1; day <= 24; day += 1)
      notes[`2026-01-${String(day).padStart(2, '0')}.md`] = '- [x] #session skill 18:30 45min 5/10\n';
    for (let day = 16; day <= 24; day += 1)
      notes[`2026-02-${day}.md`] = '- [ ] #session skill 18:30 45min 5/10 skipped:tired\n';
    const [first] = reasonsOf(notes);
    assert.match(first ?? '', /^Fewer done lately: 0 of the last 9 planned sessions, usually \d+ %$/);
  });

  it('are errors and warnings, counted; information alone is none', () => {
    assert.deepEqual(
      reasonsOf({ ...trained, 'plan.md': '- #rule skill gap:soon\n- #rule strength gap:later\n' }),
      ['Found: 2 warnings'],
    );
    const { findings, reasons } = rosterRow(athlete('Wren', trained));
    assert.deepEqual([findings.counts.information > 0, reasons], [true, []]);
  });

  it('are goals whose day has passed, and goals that need a faster pace', () => {
    const readings: Record<string, string> = {};
    for (const [day, value] of [
      ['2026-01-26', '14'],
      ['2026-02-02', '13.5'],
      ['2026-02-09', '13'],
      ['2026-02-16', '12.5'],
      ['2026-02-23', '12'],
    ])
      readings[`${day}.md`] = `- #measure low-split gap ${value}cm\n`;
    assert.deepEqual(
      reasonsOf({
        ...readings,
        'goals.md':
          '- #goal low-split by:2026-03-31 "Low split"\n- #why w\n- #metric gap from:14cm to:0cm\n' +
          '- #goal bridge by:2026-02-20 "Bridge"\n- #why w\n- #metric angle from:100deg to:150deg\n',
      }),
      ['The day of Bridge has passed: 2026-02-20', 'Low split needs a faster pace to be there on 2026-03-31'],
    );
  });
});

describe('the order of the roster', () => {
  const pain = { '2026-02-24.md': '- #pain hips 3/10\n' };
  const worsePain = { '2026-02-24.md': '- #pain hips 7/10\n' };
  const silent = { '2026-02-01.md': '- #win held it\n' };
  const warned = { ...trained, 'plan.md': '- #rule skill gap:soon\n' };

  it('puts pain before silence before what was found before those who are fine, and names last', () => {
    const all = [
      athlete('Wren', trained),
      athlete('Avocet', trained),
      athlete('Swift', warned),
      athlete('Heron', silent),
      athlete('Egret', pain),
      athlete('Dunlin', worsePain),
    ];
    assert.deepEqual(
      rosterOf(all).map(({ name }) => name),
      ['Dunlin', 'Egret', 'Heron', 'Swift', 'Avocet', 'Wren'],
    );
  });

  it('asks for the next reasons when the first are alike: more before fewer, never a light pain before a strong one', () => {
    const both = { ...pain, 'plan.md': '- #rule skill gap:soon\n' };
    assert.deepEqual(
      rosterOf([athlete('Avocet', pain), athlete('Wren', both), athlete('Swift', worsePain)]).map(
        ({ name }) => name,
      ),
      ['Swift', 'Wren', 'Avocet'],
    );
  });

  /** Journals of any mixture of what makes a reason. */
  const anyNotes = fc
    .record({
      pains: fc.array(
        fc.tuple(fc.constantFrom('hips', 'left-wrist'), fc.option(fc.integer({ min: 0, max: 10 }))),
        {
          maxLength: 2,
        },
      ),
      logged: fc.option(fc.integer({ min: 1, max: 24 })),
      unreadable: fc.integer({ min: 0, max: 2 }),
      pastGoal: fc.boolean(),
    })
    .map(({ pains, logged, unreadable, pastGoal }): Record<string, string> => {
      const lines = pains.map(
        ([region, rating]) => `- #pain ${region}${rating === null ? '' : ` ${rating}/10`}\n`,
      );
      return {
        'plan.md': `${'- #rule skill gap:soon\n'.repeat(unreadable)}${pastGoal ? '\n- #goal bridge by:2026-02-01\n' : ''}`,
        ...(lines.length > 0 ? { '2026-02-20.md': lines.join('') } : {}),
        ...(logged === null
          ? {}
          : { [`2026-02-${String(logged).padStart(2, '0')} log.md`]: '- #win held it\n' }),
      };
    });
  const anyRows = fc
    .array(fc.tuple(anyNotes, fc.constantFrom('Heron', 'Swift', 'Wren')), { minLength: 1, maxLength: 6 })
    .map((all) => all.map(([notes, name], index) => athlete(name, notes, `folder-${index}`)));

  it('is total: of two athletes exactly one comes first, and it does not matter who was asked for first', () => {
    fc.assert(
      fc.property(anyRows, (athletes) => {
        const rows = athletes.map(rosterRow);
        for (const one of rows)
          for (const other of rows) {
            const sign = Math.sign(compareRows(one, other));
            assert.equal(sign, -Math.sign(compareRows(other, one)) + 0);
            assert.equal(sign === 0, one === other);
            for (const third of rows)
              if (sign < 0 && compareRows(other, third) < 0) assert.ok(compareRows(one, third) < 0);
          }
      }),
      { seed: 20260225, numRuns: 60 },
    );
  });

  it('is the same whatever the order in which journals are read, and a change of one moves no two others', () => {
    fc.assert(
      fc.property(anyRows, fc.integer({ min: 0, max: 5 }), anyNotes, (athletes, index, notes) => {
        const ids = (rows: readonly RosterRow[]) => rows.map(({ id }) => id);
        assert.deepEqual(ids(rosterOf([...athletes].reverse())), ids(rosterOf(athletes)));
        const changed = athletes[index % athletes.length];
        if (!changed) return;
        const after = athletes.map((one) => (one === changed ? athlete(one.name, notes, one.id) : one));
        const others = (rows: readonly RosterRow[]) => ids(rows).filter((id) => id !== changed.id);
        assert.deepEqual(others(rosterOf(after)), others(rosterOf(athletes)));
      }),
      { seed: 20260226, numRuns: 40 },
    );
  });

  it('gives a reason in words to everybody who comes before one that is fine', () => {
    fc.assert(
      fc.property(anyRows, (athletes) => {
        const rows = rosterOf(athletes);
        const firstFine = rows.findIndex(({ reasons }) => reasons.length === 0);
        for (const [index, { reasons }] of rows.entries()) {
          if (firstFine >= 0 && index >= firstFine) assert.equal(reasons.length, 0);
          for (const { message } of reasons) assert.doesNotMatch(fillMessage(message), /\{\d\}|^$/);
        }
      }),
      { seed: 20260227, numRuns: 60 },
    );
  });
});
