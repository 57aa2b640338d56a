import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { addDays } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf, mondayOf } from '../../src/notation/time/iso-week';
import { planReturn, planReturnInSlices, type ReturnPlan } from '../../src/planning/return-plan';
import { fillMessage } from '../../src/training/finding';
import { anyJournalAround } from './any-journal';
import { assertNoneBroken } from './broken-rules';
import { applied, changed, date, journalOf, type Notes } from './journal-of';

const today = date('2026-03-22');
const options = { today, zone: 'Europe/Berlin', nodeLimit: 20_000 } as const;
const current = isoWeekOf(today);

/** Twelve weeks with a session on so many days, the last of them ending `weeksOff` weeks before this one. */
function trained(lines: readonly string[], weeksOff: number): Notes {
  const notes: Record<string, string> = {};
  for (let ago = weeksOff + 12; ago > weeksOff; ago -= 1) {
    const monday = addDays(today, -6 - 7 * ago);
    lines.forEach((line, index) => {
      notes[`${addDays(monday, 2 * index)}.md`] = `- [x] #session ${line}\n`;
    });
  }
  return notes;
}

const needs =
  '- #goal low-split by:2026-06-14 "Split"\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 60min 8/10\n- #need skill 2/week 60min 5/10\n';
const usual = [
  'flexibility 18:00 60min 8/10',
  'skill 18:00 60min 5/10',
  'flexibility 18:00 60min 8/10',
  'skill 11:00 60min 5/10',
];

function planned(notes: Notes, count: 2 | 3 | 4 = 4): ReturnPlan {
  const plan = planReturn(journalOf(notes), { ...options, count });
  assert.ok(plan);
  return plan;
}

describe('a return in steps', () => {
  const notes = {
    'goals.md': needs,
    'hours.md': '- #free mon tue wed thu fri 18:00-20:00\n',
    ...trained(usual, 3),
  };

  it('gives the weeks after three weeks off half, 70, 80 and 90 % of the fullest week, rounded down', () => {
    const { limits, weeks } = planned(notes);
    assert.equal(limits.because, 'break');
    assert.deepEqual(limits.usual, { sessions: 4, minutes: 240 });
    // 50/30/20/10 off: Caterisano and others (2019), Strength Cond J 41(3):1-23.
    assert.deepEqual(
      limits.weeks.map(({ week, cutPercent, sessions, minutes }) => [week, cutPercent, sessions, minutes]),
      [
        ['2026-W13', 50, 2, 120],
        ['2026-W14', 30, 2, 168],
        ['2026-W15', 20, 3, 192],
        ['2026-W16', 10, 3, 216],
      ],
    );
    assert.deepEqual(
      weeks.map(({ holds }) => holds),
      [
        { sessions: 2, minutes: 120 },
        { sessions: 2, minutes: 120 },
        { sessions: 3, minutes: 180 },
        { sessions: 3, minutes: 180 },
      ],
    );
  });

  it('has what is not hard first, and nothing hard in the first two weeks', () => {
    const kinds = planned(notes).weeks.map(({ placed }) =>
      placed
        .filter(({ kind }) => kind !== 'recovery')
        .map(({ kind, asked }) => `${kind} ${asked.facts.effort}`)
        .sort(),
    );
    assert.deepEqual(kinds, [
      ['flexibility 6', 'skill 5'],
      ['flexibility 6', 'skill 5'],
      ['flexibility 8', 'skill 5', 'skill 5'],
      ['flexibility 8', 'skill 5', 'skill 5'],
    ]);
  });

  it('is written as notes like any week, and leaves goals as they are', () => {
    const plan = planned(notes, 2);
    const written = changed(notes, plan.changes);
    assert.equal(Object.keys(written).length, 14);
    assert.match(
      Object.values(written).join('\n'),
      /^- \[ \] #session skill 18:00 60min 5\/10 for:low-split$/m,
    );
    assert.equal(written['goals.md'], undefined);
    const texts = plan.cautions.map(fillMessage).join('\n');
    assert.match(texts, /borrowed[\s\S]*not medical advice[\s\S]*licensed health professional/);
  });

  it('keeps what stands in the weeks, and counts it', () => {
    const standing = {
      ...notes,
      '2026-03-24.md': '- [ ] #session strength 18:00 90min 5/10\n- [ ] #session strength 60min\n',
    };
    const [first] = planned(standing).weeks;
    assert.deepEqual([first?.holds.sessions, first?.stoodOver], [2, true]);
    assert.deepEqual(
      first?.placed.filter(({ kind }) => kind !== 'recovery'),
      [],
    );
  });

  it('goes on with the week to which a return has come, and ends', () => {
    const back = (day: string) => ({ ...notes, [`${day}.md`]: '- [x] #session skill 18:00 60min 5/10\n' });
    assert.deepEqual(
      planned(back('2026-03-19')).limits.weeks.map(({ cutPercent }) => cutPercent),
      [30, 20, 10],
    );
    assert.deepEqual(
      planned(back('2026-03-10')).limits.weeks.map(({ cutPercent }) => cutPercent),
      [20, 10],
    );
  });

  it('is not needed by somebody who trained of late, and not possible for one who never did', () => {
    assert.equal(
      planReturn(journalOf({ 'goals.md': needs, ...trained(usual, 0) }), { ...options, count: 4 }),
      undefined,
    );
    assert.equal(planReturn(journalOf({ 'goals.md': needs }), { ...options, count: 4 }), undefined);
  });

  it('is there while sessions slip, too', () => {
    const notes: Record<string, string> = { 'goals.md': needs };
    for (let ago = 84; ago > 0; ago -= 2) {
      const isMissed = ago <= 20 && ago % 6 !== 0;
      notes[`${addDays(today, -ago)}.md`] =
        `- [${isMissed ? ' ' : 'x'}] #session skill 18:00 60min 5/10${isMissed ? ' skipped:tired' : ''}\n`;
    }
    const { limits } = planned(notes, 2);
    assert.equal(limits.because, 'slipping');
    assert.deepEqual(
      limits.weeks.map(({ sessions }) => sessions),
      [2, 2],
    );
  });

  it('says where the forecast goes, and leaves target and date', () => {
    const measured: Record<string, string> = { ...notes };
    for (let ago = 10; ago >= 4; ago -= 1)
      measured[`${addDays(today, -6 - 7 * ago)}.md`] =
        `- [x] #session flexibility 18:00 60min 8/10\n- #measure low-split gap ${5 + ago / 2}cm\n`;
    const [moved, ...more] = planned(measured).forecasts;
    assert.deepEqual(more, []);
    // From Sunday 22 February, the last day trained, to Monday 23 March: 29 days; 50 + 30 + 20 + 10 % of a week: 7.7 days.
    assert.deepEqual([moved?.goal, moved?.daysLater], ['low-split', 37]);
    assert.match(
      fillMessage(moved?.message ?? { template: '', values: [] }),
      /^\S+ to \S+ becomes \S+ to \S+; the target and the date, 2026-06-14, stay$/,
    );
  });

  it('can be stopped between slices', () => {
    const stopped = planReturnInSlices(journalOf(notes), {
      ...options,
      count: 4,
      nodesPerSlice: 1,
      shouldStop: () => true,
    });
    let step = stopped.next();
    while (step.done !== true) step = stopped.next();
    assert.equal(step.value, 'stopped');
  });
});

describe('a return of any journal', function () {
  this.timeout(300_000);
  const weeks = [1, 2, 3, 4, 5].map((ahead) => addWeeks(current, ahead));

  it('holds no week above its step that was not, and breaks no rule', () => {
    let placed = 0;
    fc.assert(
      fc.property(
        anyJournalAround(mondayOf(addWeeks(current, 1))),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 2, max: 8 }),
        (journal, perWeek, weeksOff) => {
          const undone = Object.fromEntries(
            Object.entries(journal).map(([path, text]) => [path, text.replaceAll('[x]', '[ ]')]),
          );
          const notes = { ...undone, ...trained(usual.slice(0, perWeek), weeksOff) };
          const plan = planned(notes);
          const after = applied(notes, plan.changes);
          for (const { limit, holds, placed: own, stoodOver } of plan.weeks) {
            placed += own.length;
            const training = own.filter(({ asked }) => !asked.facts.isRecovery);
            if (training.length === 0) continue;
            assert.equal(stoodOver, false);
            assert.ok(holds.sessions <= limit.sessions);
            assert.ok(holds.sessions === 1 || holds.minutes <= (limit.minutes ?? Number.POSITIVE_INFINITY));
            if (limit.cutPercent >= 30) for (const { asked } of training) assert.ok(asked.facts.effort < 7);
          }
          assertNoneBroken(notes, after, weeks, options);
        },
      ),
      { seed: 7, numRuns: 12 },
    );
    assert.ok(placed > 40, `${placed} placed`);
  });
});
