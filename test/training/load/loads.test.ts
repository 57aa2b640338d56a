import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { type WeekLoadFigures, weekLoads } from '../../../src/training/load/week-loads';
import { workloadRatios } from '../../../src/training/load/workload-ratios';
import { printed } from '../../published/printed';
import { date, week } from '../dates';
import { journalFromNotes } from '../journal-from-text';

type Notes = Readonly<Record<string, string>>;

function loads(
  notes: Notes,
  today: string,
  first = '2026-W09',
  last = '2026-W09',
): readonly WeekLoadFigures[] {
  return weekLoads(journalFromNotes(notes), { today: date(today), first: week(first), last: week(last) });
}

function only(notes: Notes, today = '2026-03-09'): WeekLoadFigures {
  const [found, ...more] = loads(notes, today);
  assert.ok(found && more.length === 0);
  return found;
}

/** A note for each day from 2026-02-23 on whose load is not 0: one session of that load. */
function weekOf(daily: readonly number[], monday = '2026-02-23'): Record<string, string> {
  const notes: Record<string, string> = {};
  const start = Date.parse(`${monday}T00:00Z`);
  for (const [index, load] of daily.entries()) {
    const day = new Date(start + index * 86_400_000).toISOString().slice(0, 10);
    notes[`${day}.md`] = load === 0 ? 'Rest.\n' : `- [x] #session strength ${load / 6}min 6/10\n`;
  }
  return notes;
}

describe('the load of a week', () => {
  it('is effort x minutes of the sessions done, by day', () => {
    const found = only({
      '2026-02-23.md': '- [x] #session flexibility 75min 7/10\n- [x] #session skill 45min 5/10\n',
      '2026-02-25.md':
        '- [x] #session strength 18:30-19:15 8/10\n- [ ] #session skill 45min 5/10 skipped:tired\n',
      '2026-02-26.md': '- [ ] #session strength 60min 8/10 moved:2026-03-03\n',
    });
    assert.deepEqual(found.load, { n: 3, unknown: 0, total: 1110, knownTotal: 1110 });
    assert.deepEqual(
      found.days.map(({ load }) => load.total),
      [750, 0, 360, 0, 0, 0, 0],
    );
    assert.equal(found.minutes, 165);
  });

  it('is unknown, not zero, where a rating or a length is missing; both are counted', () => {
    const found = only({
      '2026-02-23.md': '- [x] #session flexibility 75min\n',
      '2026-02-24.md': '- [x] #session skill 5/10\n',
      '2026-02-25.md': '- [x] #session strength 60min 6/10\n',
    });
    assert.deepEqual(found.load, { n: 3, unknown: 2, total: undefined, knownTotal: 360 });
    assert(found.spread.status === 'estimated');
    assert.equal(found.spread.unknown, 2);
    assert.deepEqual(found.spread.monotony, {
      status: 'not-estimable',
      n: 7,
      reason: 'unknown-loads',
      missing: [{ what: 'known-days', have: 5, need: 7 }],
    });
    assert.equal(found.change.status, 'not-estimable');
  });

  it('takes the length of the need, but never its rating: that is a plan', () => {
    const need = '- #need strength 2/week 60min 7/10\n';
    assert.equal(only({ 'n.md': need, '2026-02-23.md': '- [x] #session strength 6/10\n' }).load.total, 360);
    assert.equal(only({ 'n.md': need, '2026-02-23.md': '- [x] #session strength 60min\n' }).load.unknown, 1);
  });

  it('counts sessions that nobody ticked as not done, and says how many', () => {
    const found = only({
      '2026-02-23.md': '- [x] #session strength 60min 6/10\n- [ ] #session strength 60min 6/10\n',
    });
    assert.deepEqual([found.load.total, found.unmarked], [360, 1]);
  });

  // Invented weeks, recomputed with a numerical library [C].
  it('has the monotony and strain of the worked weeks, rest days as 0', () => {
    for (const [daily, total, monotony, strain] of [
      [[300, 0, 480, 180, 0, 540, 120], 1620, '1.063949', '1723.5975'],
      [[540, 360, 540, 0, 540, 360, 0], 2340, '1.380585', '3230.5690'],
      [[400, 0, 200, 500, 0, 300, 0], 1400, '0.960769', '1345.0765'],
    ] as const) {
      const { spread } = only(weekOf(daily.map((load) => load)));
      assert(spread.status === 'estimated');
      assert.ok(Math.abs((spread.total ?? 0) - total) < 1e-9);
      assert(typeof spread.monotony === 'number' && typeof spread.strain === 'number');
      printed(spread.monotony, monotony);
      printed(spread.strain, strain);
    }
  });

  it('that is not whole has no monotony: the running one, and the one the journal began in', () => {
    const running = only(weekOf([300, 0, 480]), '2026-02-25');
    assert.deepEqual([running.isOver, running.load.total], [false, 780]);
    assert(running.spread.status === 'not-estimable');
    assert.deepEqual(running.spread.missing, [{ what: 'days', have: 3, need: 7 }]);
    const begun = only({ '2026-02-26.md': '- [x] #session strength 60min 6/10\n' });
    assert(begun.spread.status === 'not-estimable');
    assert.equal(begun.days.length, 4);
  });

  it('is compared with the mean of the three weeks before it, when they are whole and known', () => {
    const notes = {
      ...weekOf([600, 0, 0, 0, 0, 0, 0], '2026-02-02'),
      ...weekOf([300, 0, 300, 0, 0, 0, 0], '2026-02-09'),
      ...weekOf([600, 0, 0, 0, 0, 0, 300], '2026-02-16'),
      ...weekOf([540, 0, 0, 0, 0, 300, 0]),
    };
    const { change } = only(notes);
    assert(change.status === 'estimated');
    assert.ok(Math.abs(change.percent - 20) < 1e-9);
    assert.ok(Math.abs(change.previousMean - 700) < 1e-9);
    const { change: early } = loads(notes, '2026-03-09', '2026-W08', '2026-W08')[0] ?? assert.fail();
    assert(early.status === 'not-estimable');
    assert.deepEqual(early.missing, [{ what: 'weeks', have: 2, need: 3 }]);
  });

  it('is shared out by kind, which adds up, and by region, which does not', () => {
    const found = only({
      'routines.md': '- #routine legs flexibility regions:hamstrings,hips\n',
      '2026-02-23.md':
        '- [x] #session flexibility 60min 5/10 routine:legs\n- [x] #session skill 30min 5/10\n',
      '2026-02-24.md': '- [x] #session skill 30min\n',
    });
    const short = (shares: WeekLoadFigures['byKind']) =>
      shares.map(({ name, load, minutes }) => [name, load.knownTotal, load.unknown, minutes]);
    assert.deepEqual(short(found.byKind), [
      ['flexibility', 300, 0, 60],
      ['skill', 150, 1, 60],
    ]);
    assert.deepEqual(short(found.byRegion), [
      ['hamstrings', 300, 0, 60],
      ['hips', 300, 0, 60],
      [undefined, 150, 1, 60],
    ]);
  });

  it('does not reach back before the journal, nor ahead of today', () => {
    const notes = weekOf([600, 0, 0, 0, 0, 0, 0]);
    assert.deepEqual(
      loads(notes, '2026-03-04', '2026-W01', '2026-W20').map((one) => one.week),
      ['2026-W09', '2026-W10'],
    );
    assert.deepEqual(loads({ 'journal.md': '' }, '2026-03-04'), []);
  });
});

describe('recent load beside longer load', () => {
  const days = (count: number, load: number) => new Array<number>(count).fill(load);

  it('is told as a description, up to yesterday, with what is said against it', () => {
    // 21 days of 300 and 7 of 600, invented [C]: uncoupled 2, exponential 1.339350.
    const notes = weekOf([...days(21, 300), ...days(7, 600)]);
    const found = workloadRatios(journalFromNotes(notes), date('2026-03-23'));
    assert.ok(found);
    assert.equal(found.upTo, '2026-03-22');
    assert(found.rolling.status === 'estimated' && found.exponential.status === 'estimated');
    printed(found.rolling.ratio, '2.000000');
    printed(found.exponential.ratio, '1.339350');
    assert.equal(found.criticism.length, 4);
  });

  it('is not told before 28 known days in a row', () => {
    const notes = weekOf(days(27, 300));
    const found = workloadRatios(journalFromNotes(notes), date('2026-03-22'));
    assert(found?.rolling.status === 'not-estimable');
    assert.deepEqual(found.rolling.missing, [{ what: 'known-days-in-a-row', have: 27, need: 28 }]);
    assert.equal(workloadRatios(journalFromNotes({ 'journal.md': '' }), date('2026-03-22')), undefined);
    const unknown = { ...weekOf(days(40, 300)), '2026-03-25.md': '- [x] #session strength 60min\n' };
    const broken = workloadRatios(journalFromNotes(unknown), date('2026-04-04'));
    assert(broken?.rolling.status === 'not-estimable');
    assert.equal(broken.rolling.reason, 'unknown-loads');
  });
});
