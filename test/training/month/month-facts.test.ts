import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Weekday } from '../../../src/notation/entries';
import { type IsoDate, isoDate, isoWeekday } from '../../../src/notation/time/iso-date';
import { daysOfMonth, type IsoMonth } from '../../../src/notation/time/iso-month';
import { fillMessage } from '../../../src/training/finding';
import { type MonthFacts, type MonthWeek, monthFacts } from '../../../src/training/month/month-facts';
import { weekClauses } from '../../../src/training/month/week-clauses';
import { wilson } from '../../../src/training/statistics/proportion';
import { checkContext } from '../../../src/training/week-under-check';
import { journalFromNotes } from '../journal-from-text';

type Notes = Readonly<Record<string, string>>;

/** February 2026, which begins on a Sunday, as it is on Wednesday, the 25th. */
function february(notes: Notes, weekStart?: Weekday, today = '2026-02-25'): MonthFacts {
  const context = checkContext(journalFromNotes(notes), { today: today as IsoDate, zone: 'UTC' });
  return monthFacts(context, '2026-02' as IsoMonth, weekStart);
}

function dayOf(facts: MonthFacts, date: string) {
  const day = facts.weeks.flatMap(({ days }) => days).find((one) => one.date === date);
  assert.ok(day, date);
  return day;
}

/** The marks of a day's sessions, with reason or new day. */
function marks(facts: MonthFacts, date: string): readonly string[] {
  return dayOf(facts, date).sessions.map(({ facts: { session }, mark, reason, movedTo }) =>
    [session.kind, mark, reason ?? movedTo].filter((word) => word !== undefined).join(' '),
  );
}

function weekFrom(facts: MonthFacts, first: string): MonthWeek {
  const week = facts.weeks.find((one) => one.first === first);
  assert.ok(week, first);
  return week;
}

/** The sentence about the week that begins on the day. */
function sentence(facts: MonthFacts, first: string, withReasons = true): string {
  return weekClauses(weekFrom(facts, first), withReasons).map(fillMessage).join('; ');
}

describe('the days of a month', () => {
  const notes: Notes = {
    '2026-02-02.md':
      '- [x] #session flexibility 18:30 60min\n- [ ] #session strength 12:00 45min skipped:tired\n',
    '2026-02-03.md': '- [ ] #session flexibility 18:30 60min skipped:travel\n',
    '2026-02-04.md': '- [x] #session recovery 30min\n',
    '2026-02-05.md': '- [ ] #session skill 18:30 60min moved:2026-02-06\n',
    '2026-02-06.md': '- [x] #session skill 18:30 60min\n',
    '2026-02-09.md': '- [ ] #session strength 45min\n',
    '2026-02-25.md': '- [x] #session skill 08:00 30min\n- [ ] #session flexibility 18:30 60min\n',
    '2026-02-26.md': '- [ ] #session strength 45min\n',
    'plan.md':
      '- #busy 2026-02-03..2026-02-04\n- #busy 2026-02-06 10:00-12:00\n- #event 2026-02-28 "open floor"\n',
  };

  it('say of each session whether it was kept, missed and why, moved, not marked, or is planned', () => {
    const facts = february(notes);
    assert.deepEqual(marks(facts, '2026-02-02'), ['strength missed tired', 'flexibility kept']);
    assert.deepEqual(marks(facts, '2026-02-03'), ['flexibility excused travel']);
    assert.deepEqual(marks(facts, '2026-02-05'), ['skill moved 2026-02-06']);
    assert.deepEqual(marks(facts, '2026-02-06'), ['skill kept']);
    assert.deepEqual(marks(facts, '2026-02-09'), ['strength unmarked']);
    assert.deepEqual(marks(facts, '2026-02-25'), ['skill kept', 'flexibility planned']);
    assert.deepEqual(marks(facts, '2026-02-26'), ['strength planned']);
  });

  it('know past, today and the days to come, and their note', () => {
    const facts = february(notes);
    const when = ['2026-02-24', '2026-02-25', '2026-02-26'].map((date) => dayOf(facts, date).when);
    assert.deepEqual(when, ['past', 'today', 'ahead']);
    assert.equal(dayOf(facts, '2026-02-26').note, '2026-02-26.md');
    assert.equal(dayOf(facts, '2026-02-24').note, undefined);
  });

  it('are busy where the whole day is taken, and name the events', () => {
    const facts = february(notes);
    const busy = facts.weeks.flatMap(({ days }) =>
      days.filter(({ isBusy }) => isBusy).map(({ date }) => date),
    );
    assert.deepEqual(busy, ['2026-02-03', '2026-02-04']);
    assert.deepEqual(
      dayOf(facts, '2026-02-28').events.map(({ name }) => name),
      ['open floor'],
    );
  });

  it('are days of rest when they are over, the journal had begun, and nothing but recovery stands', () => {
    const facts = february(notes);
    const rest = (date: string) => dayOf(facts, date).isRest;
    assert.equal(rest('2026-02-01'), false, 'before the first note');
    assert.equal(rest('2026-02-04'), true, 'recovery alone');
    assert.equal(rest('2026-02-07'), true, 'nothing');
    assert.equal(rest('2026-02-09'), false, 'planned, and not marked');
    assert.equal(rest('2026-02-27'), false, 'still to come');
    // 2 to 24 February are 23 days; training stands on the 2nd, 3rd, 5th, 6th and 9th.
    assert.equal(facts.restDays, 18);
  });

  it('come in whole weeks from Monday, or from another day', () => {
    const firsts = (weekStart?: Weekday) => february(notes, weekStart).weeks.map(({ first }) => first);
    assert.deepEqual(firsts(), ['2026-01-26', '2026-02-02', '2026-02-09', '2026-02-16', '2026-02-23']);
    assert.deepEqual(firsts(7), ['2026-02-01', '2026-02-08', '2026-02-15', '2026-02-22']);
    assert.deepEqual(firsts(6), ['2026-01-31', '2026-02-07', '2026-02-14', '2026-02-21', '2026-02-28']);
  });

  it('hold every day of the month once, in weeks of seven, whatever the month', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1970, max: 2100 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 7 }),
        (year, number, start) => {
          const month = `${year}-${String(number).padStart(2, '0')}` as IsoMonth;
          const context = checkContext(journalFromNotes({}), { today: '2026-02-25' as IsoDate, zone: 'UTC' });
          const { weeks } = monthFacts(context, month, start as Weekday);
          assert.ok(weeks.length >= 4 && weeks.length <= 6);
          const days = weeks.flatMap((week) => week.days);
          assert.equal(days.length, 7 * weeks.length);
          assert.ok(weeks.every((week) => isoWeekday(week.days[0]?.day ?? 0) === start));
          const { first, last } = daysOfMonth(month);
          assert.deepEqual(
            days.filter(({ isInMonth }) => isInMonth).map(({ date }) => date),
            Array.from({ length: last - first + 1 }, (_, index) => isoDate(first + index)),
          );
          assert.ok(days.every(({ day }, index) => day === (days[0]?.day ?? 0) + index));
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });
});

describe('the totals of a month', () => {
  const notes: Notes = {
    '2026-01-27.md': '- [x] #session flexibility 60min\n',
    '2026-01-28.md': '- [x] #session flexibility 60min\n',
    '2026-01-29.md': '- [x] #session flexibility 60min\n',
    '2026-02-02.md': '- [x] #session flexibility 60min\n- [x] #session strength 45min\n',
    '2026-02-03.md': '- [ ] #session flexibility 60min skipped:sore\n',
    '2026-02-10.md': '- [x] #session strength 90min\n- [x] #session strength 08:00\n',
    '2026-02-11.md': '- [ ] #session strength 45min skipped:ill\n- [ ] #session flexibility 60min\n',
    '2026-02-24.md': '- [ ] #session skill moved:2026-02-27\n',
    '2026-02-25.md': '- [ ] #session flexibility 60min\n',
    '2026-03-01.md': '- [ ] #session flexibility 60min\n',
  };

  it('are those of its own days: done of planned with its interval, excused apart', () => {
    const { kept, minutesDone, ahead, moved } = february(notes);
    assert.deepEqual(
      [kept.done, kept.n, kept.missed, kept.unmarked, kept.excused],
      [4, 6, 1, 1, 1],
      'done, counted, missed, not marked, excused',
    );
    assert.deepEqual(kept.share, wilson(4, 6));
    assert.deepEqual(kept.reasons, [
      { reason: 'ill', count: 1 },
      { reason: 'sore', count: 1 },
    ]);
    // One of the strength sessions says no length.
    assert.equal(minutesDone, 60 + 45 + 90);
    // Today's flexibility, and the skill session that was moved to the 27th.
    assert.equal(ahead, 2);
    assert.equal(moved, 1);
  });

  it('give no share where nothing was planned', () => {
    const { kept, best, byKind } = february({});
    assert.equal('status' in kept.share && kept.share.status, 'not-estimable');
    assert.equal(best, undefined);
    assert.deepEqual(byKind, []);
  });

  it('are told by kind, in order of name', () => {
    assert.deepEqual(
      february(notes).byKind.map(({ kind, kept, minutesDone, ahead }) => [
        kind,
        kept.done,
        kept.n,
        kept.excused,
        minutesDone,
        ahead,
      ]),
      [
        ['flexibility', 1, 3, 0, 60, 1],
        ['skill', 0, 0, 0, 0, 1],
        ['strength', 3, 3, 1, 135, 0],
      ],
    );
  });

  it('name the week with most sessions done, of those that have most of their days in the month', () => {
    // Three sessions stand in the week of 26 January, two in that of 2 February.
    assert.equal(february(notes).best?.first, '2026-02-02');
    // A week that begins on Saturday, 31 January is one of February.
    assert.equal(february(notes, 6).best?.first, '2026-01-31');
  });

  it('let minutes, then the earlier week decide where two are alike', () => {
    const alike: Notes = {
      '2026-02-03.md': '- [x] #session strength 45min\n',
      '2026-02-10.md': '- [x] #session strength 50min\n',
      '2026-02-17.md': '- [x] #session strength 50min\n',
    };
    assert.equal(february(alike).best?.first, '2026-02-09');
  });

  it('do not count sessions of days to come that were called off already', () => {
    const { kept, weeks } = february({ '2026-02-27.md': '- [ ] #session skill skipped:travel\n' });
    assert.equal(kept.excused, 0);
    assert.equal(weeks.at(-1)?.past.length, 0);
  });
});

describe('the line of a week', () => {
  const week = (lines: Readonly<Record<string, string>>) =>
    sentence(
      february(
        Object.fromEntries(Object.entries(lines).map(([day, line]) => [`2026-02-${day}.md`, `- ${line}\n`])),
      ),
      '2026-02-16',
    );

  it('says how many of a kind were kept, and what the other fell to', () => {
    assert.equal(
      week({
        16: '[x] #session flexibility',
        18: '[x] #session flexibility',
        20: '[ ] #session flexibility skipped:travel',
      }),
      '2 of 3 flexibility sessions; the third fell to travel',
    );
  });

  const reasons: Readonly<Record<string, string>> = {
    'skipped:work': 'the second fell to work',
    'skipped:ill': 'the second fell to illness',
    'skipped:injured': 'the second fell to an injury',
    'skipped:sore': 'the second was left out while sore',
    'skipped:tired': 'the second was left out while tired',
    'skipped:other': 'the second was left out',
    'skipped:moving-house': 'the second was left out (moving-house)',
    '': 'the second is not marked yet',
  };
  for (const [field, clause] of Object.entries(reasons)) {
    it(`says "${clause}" of ${field === '' ? 'an empty box' : field}`, () => {
      assert.equal(
        week({ 16: '[x] #session skill', 18: `[ ] #session skill ${field}` }),
        `1 of 2 skill sessions; ${clause}`,
      );
    });
  }

  it('leaves the reasons out where they are not asked for', () => {
    const facts = february({
      '2026-02-16.md': '- [x] #session skill\n',
      '2026-02-18.md': '- [ ] #session skill skipped:secret\n',
    });
    assert.equal(sentence(facts, '2026-02-16', false), '1 of 2 skill sessions');
  });

  it('counts a single session, and the kinds that were kept whole in one clause', () => {
    assert.equal(
      week({
        16: '[ ] #session strength skipped:tired',
        17: '[x] #session skill',
        18: '[x] #session flexibility',
      }),
      '0 of 1 strength session; it was left out while tired; all others kept',
    );
  });

  it('only counts where three and more were not kept', () => {
    assert.equal(
      week({
        16: '[ ] #session skill skipped:work',
        17: '[ ] #session skill skipped:work',
        18: '[ ] #session skill skipped:work',
      }),
      '0 of 3 skill sessions',
    );
  });

  it('says that all were kept, how many are to come, or that none was planned', () => {
    assert.equal(week({ 16: '[x] #session skill', 17: '[x] #session strength' }), 'all 2 sessions kept');
    assert.equal(week({ 16: '[x] #session skill' }), 'the one session kept');
    assert.equal(week({}), 'no session planned');
    const facts = february({
      '2026-02-24.md': '- [x] #session skill\n',
      '2026-02-26.md': '- [ ] #session skill\n',
      '2026-02-27.md': '- [ ] #session skill\n',
    });
    assert.equal(sentence(facts, '2026-02-23'), 'the one session kept; 2 to come');
  });
});
