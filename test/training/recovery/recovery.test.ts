import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  type RecoveryFigures,
  type RecoveryOptions,
  recoveryFigures,
} from '../../../src/training/recovery/recovery-figures';
import { checkContext } from '../../../src/training/week-under-check';
import { date } from '../dates';
import { journalFromNotes } from '../journal-from-text';

type Notes = Readonly<Record<string, string>>;

function recoveryOf(
  notes: Notes,
  name: string,
  {
    today = '2026-03-30',
    zone = 'UTC',
    ...options
  }: RecoveryOptions & { today?: string; zone?: string } = {},
): RecoveryFigures {
  const context = checkContext(journalFromNotes(notes), { today: date(today), zone });
  const found = recoveryFigures(context, options).find(({ subject }) => subject.name === name);
  assert.ok(found, `nothing about ${name}`);
  return found;
}

/** The pairs in short: hours, what they were counted in, sore or ready, load of the first. */
function pairs(notes: Notes, name = 'flexibility', zone = 'UTC'): readonly string[] {
  return recoveryOf(notes, name, { zone }).pairs.map(({ hours, countedIn, sore, load }) =>
    [hours, countedIn, sore ? 'sore' : 'ready', ...(load === undefined ? [] : [load])].join(' '),
  );
}

const legs =
  '- #routine legs flexibility 60min regions:hamstrings\n- #routine arms flexibility regions:shoulders\n';
const session = (more = '') => `- [x] #session flexibility 18:00 60min 7/10 ${more}\n`;

describe('pairs of sessions', () => {
  it('are consecutive done ones of a kind: hours from end to start, and the load of the first', () => {
    assert.deepEqual(
      pairs({
        '2026-03-02.md': session(),
        '2026-03-03.md': '- [x] #session strength 18:00 60min 7/10\n',
        '2026-03-04.md': `${session()}- #sore hamstrings 4/10\n`,
        '2026-03-07.md': '- [x] #session flexibility 10:00 60min\n',
      }),
      ['47 hours sore 420', '63 hours ready 420'],
    );
  });

  it('are counted through the zone, so that a clock change is an hour', () => {
    assert.deepEqual(
      pairs({ '2026-03-28.md': session(), '2026-03-29.md': session() }, 'flexibility', 'Europe/Lisbon'),
      ['22 hours ready 420'],
    );
  });

  it('are counted in whole days where a time is missing, and say so', () => {
    const notes = { '2026-03-02.md': '- [x] #session flexibility\n', '2026-03-05.md': session() };
    assert.deepEqual(pairs(notes), ['72 days ready']);
    assert.equal(recoveryOf(notes, 'flexibility').pairsInDays, 1);
  });

  it('count a second one that was skipped for being sore, and go on from the last that was done', () => {
    assert.deepEqual(
      pairs({
        '2026-03-02.md': session(),
        '2026-03-04.md': '- [ ] #session flexibility 18:00 60min 7/10 skipped:sore\n',
        '2026-03-05.md': '- [ ] #session flexibility 18:00 60min 7/10 skipped:work\n',
        '2026-03-06.md': session(),
      }),
      ['47 hours sore 420', '95 hours ready 420'],
    );
  });

  it('leave out moved, planned and unmarked sessions, and a session of the same day', () => {
    assert.deepEqual(
      pairs({
        '2026-03-02.md': `${session()}- [x] #session flexibility 21:00 30min 5/10\n`,
        '2026-03-03.md': '- [ ] #session flexibility 18:00 60min\n',
        '2026-03-04.md': '- [ ] #session flexibility 18:00 60min moved:2026-04-20\n',
        '2026-03-05.md': session(),
      }),
      ['68.5 hours ready 150'],
    );
  });

  it('end at a break of two weeks', () => {
    const notes = (back: string) => ({ '2026-03-02.md': session(), [`2026-03-${back}.md`]: session() });
    assert.equal(pairs(notes('15')).length, 1);
    assert.equal(pairs(notes('16')).length, 0);
  });
});

describe('still sore', () => {
  const after = (sore: string, routines = legs) =>
    pairs({
      'routines.md': routines,
      '2026-03-02.md': session('routine:legs'),
      '2026-03-04.md': `${session('routine:legs')}${sore}\n`,
    })[0]?.split(' ')[2];

  it('is soreness of a region that the first session loaded, from 3/10 on or unrated', () => {
    assert.equal(after('- #sore hamstrings 3/10'), 'sore');
    assert.equal(after('- #sore left-hamstring 3/10'), 'sore');
    assert.equal(after('- #sore hamstrings'), 'sore');
    assert.equal(after('- #sore hamstrings 2/10'), 'ready');
    assert.equal(after('- #sore shoulders 8/10'), 'ready');
  });

  it('is never guessed from words, and pain is not soreness', () => {
    assert.equal(after('still sore, hamstrings awful'), 'ready');
    assert.equal(after('- #win hamstrings still sore and did it'), 'ready');
    assert.equal(after('- #pain hamstrings 6/10'), 'ready');
  });

  it('is any soreness where nothing says what the sessions load, and the pair says so', () => {
    const notes = {
      '2026-03-02.md': session(),
      '2026-03-04.md': `${session()}- #sore shoulders 4/10\n`,
    };
    const [pair] = recoveryOf(notes, 'flexibility').pairs;
    assert.deepEqual([pair?.sore, pair?.anyRegion], [true, true]);
    assert.deepEqual(
      pair?.reports.map(({ note, region }) => [note, region]),
      [['2026-03-04.md', 'shoulders']],
    );
  });

  it('of a region is its own soreness, between sessions whose routines train it', () => {
    const notes = {
      'routines.md': legs,
      '2026-03-02.md': session('routine:legs'),
      '2026-03-03.md': `${session('routine:arms')}- #sore hamstrings 5/10\n`,
      '2026-03-05.md': `${session('routine:legs')}- #sore shoulders 5/10\n`,
    };
    assert.deepEqual(pairs(notes, 'hamstrings'), ['71 hours ready 420']);
    assert.deepEqual(pairs(notes, 'flexibility'), ['23 hours sore 420', '47 hours sore 420']);
  });
});

describe('the learned gap', () => {
  /** Seven pairs a day apart, sore; six pairs three to five days apart, not. */
  const days = ['05', '06', '09', '10', '13', '14', '18', '19', '22', '23', '27', '28', '31'];
  const soreDays = ['06', '10', '14', '19', '23', '28'];
  function learned(rule = ''): Record<string, string> {
    const notes: Record<string, string> = { 'routines.md': legs + rule };
    for (const day of days) {
      const sore = soreDays.includes(day) ? '- #sore hamstrings 5/10\n' : '';
      notes[`2026-01-${day}.md`] = session('routine:legs') + sore;
    }
    return notes;
  }
  const today = '2026-02-25';

  it('is told with its interval, its number of pairs, and the gaps seen', () => {
    const { learned: found, pairs: evidence } = recoveryOf(learned(), 'flexibility', { today });
    assert(found.status === 'estimated');
    assert.deepEqual([found.n, found.sore, found.ready, evidence.length], [12, 6, 6, 12]);
    assert.deepEqual(found.observed, { lower: 23, upper: 95 });
    assert.ok(found.interval.lower < found.hours && found.hours < found.interval.upper);
    assert.ok(found.hours > 23 && found.hours < 95);
  });

  it('follows the chance that the athlete accepts: who accepts more waits less', () => {
    const hours = [0.1, 0.2, 0.4].map((acceptedChance) => {
      const found = recoveryOf(learned(), 'flexibility', { today, acceptedChance }).learned;
      assert(found.status === 'estimated');
      return found.hours;
    });
    assert.deepEqual(
      [...hours].sort((a, b) => b - a),
      hours,
    );
  });

  it('is refused with what is missing while the notes are few', () => {
    const { '2026-01-31.md': _, ...fewer } = learned();
    const found = recoveryOf(fewer, 'flexibility', { today }).learned;
    assert(found.status === 'not-estimable');
    assert.deepEqual(found.missing, [{ what: 'pairs', have: 11, need: 12 }]);
  });

  it('suggests another gap when the one kept lies outside, in steps of 12 h', () => {
    const { suggestion, current } = recoveryOf(learned('- #rule flexibility gap:20h\n'), 'flexibility', {
      today,
    });
    assert.deepEqual([current?.hours, current?.by], [20, 'rule']);
    assert.deepEqual(
      [suggestion?.change, suggestion?.currentHours, suggestion?.suggestedHours],
      ['longer', 20, 60],
    );
  });

  it('suggests nothing when the gap kept lies inside the interval', () => {
    assert.equal(
      recoveryOf(learned('- #rule flexibility gap:60h\n'), 'flexibility', { today }).suggestion,
      undefined,
    );
  });

  it('suggests a shorter one only while nothing that is trained hurts', () => {
    const rule = '- #rule flexibility gap:7d\n';
    assert.equal(recoveryOf(learned(rule), 'flexibility', { today }).suggestion?.change, 'shorter');
    const hurting = { ...learned(rule), '2026-02-20.md': '- #pain hamstrings 4/10\n' };
    assert.equal(recoveryOf(hurting, 'flexibility', { today }).suggestion, undefined);
    const over = { ...hurting, '2026-02-22.md': '- #pain hamstrings clear\n' };
    assert.equal(recoveryOf(over, 'flexibility', { today }).suggestion?.change, 'shorter');
  });

  it('says the default where no rule is written, and the gap of a need', () => {
    const gap = (lines: string, name: string) => {
      const { current } = recoveryOf(learned(lines), name, { today });
      return current && [current.hours, current.by];
    };
    assert.deepEqual(gap('', 'flexibility'), [48, 'default']);
    assert.equal(gap('', 'hamstrings'), undefined);
    assert.deepEqual(gap('- #rule hamstrings gap:72h\n', 'hamstrings'), [72, 'rule']);
    const need = '- #kind contortion like:flexibility\n- #need skill 1/week gap:7d\n';
    const skill = { ...learned(need), '2026-01-07.md': '- [x] #session skill 45min\n' };
    assert.deepEqual(recoveryOf(skill, 'skill', { today }).current?.hours, 168);
  });

  it('stands all week: what is written since Monday does not change it', () => {
    const notes = {
      ...learned(),
      '2026-02-24.md': session('routine:legs'),
      '2026-02-25.md': session('routine:legs'),
    };
    assert.equal(recoveryOf(notes, 'flexibility', { today }).pairs.length, 12);
    assert.equal(recoveryOf(notes, 'flexibility', { today: '2026-03-02' }).pairs.length, 13);
  });

  it('forgets what is older than the weeks asked for', () => {
    assert.ok(recoveryOf(learned(), 'flexibility', { today, weeks: 5 }).pairs.length < 8);
  });
});
