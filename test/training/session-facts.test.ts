import assert from 'node:assert/strict';
import type { SessionFacts } from '../../src/training/session-facts';
import { sessionTimes } from '../../src/training/session-times';
import { weekReader } from '../../src/training/training-week';
import { date, week } from './dates';
import { journalFromNotes } from './journal-from-text';

/** The facts of the sessions of 2026-W09. */
function facts(notes: Record<string, string>, today = '2026-02-25'): readonly SessionFacts[] {
  return weekReader(journalFromNotes(notes), date(today))(week('2026-W09')).sessions;
}

function only(plan: string, session: string): SessionFacts {
  const [one] = facts({ 'journal.md': plan, '2026-02-24.md': session });
  assert.ok(one);
  return one;
}

describe('the state of a session', () => {
  for (const [day, line, state, stands] of [
    ['2026-02-25', '- [ ] #session skill', 'planned', true],
    ['2026-02-26', '- [ ] #session skill', 'planned', true],
    ['2026-02-26', '#session skill', 'planned', true],
    ['2026-02-24', '- [ ] #session skill', 'overdue', true],
    ['2026-02-24', '- [x] #session skill', 'done', true],
    ['2026-02-26', '- [X] #session skill', 'done', true],
    ['2026-02-24', '- [ ] #session skill skipped:ill', 'skipped', false],
    ['2026-02-24', '- [x] #session skill skipped:ill', 'skipped', false],
    ['2026-02-26', '- [ ] #session skill skipped:ill', 'skipped', false],
    ['2026-02-24', '- [ ] #session skill moved:2026-03-05', 'moved', false],
    ['2026-02-24', '- [x] #session skill moved:2026-03-05', 'moved', false],
  ] as const) {
    it(`on ${day}, seen from 2026-02-25, "${line}" is ${state}`, () => {
      const [one] = facts({ [`${day}.md`]: line });
      assert.deepEqual([one?.state, one?.stands], [state, stands]);
    });
  }

  it('stands again on the date to which it was moved', () => {
    assert.deepEqual(
      facts({ '2026-02-23.md': '- [ ] #session skill 18:00 moved:2026-02-26' }).map((one) => [
        one.session.date,
        one.state,
      ]),
      [
        ['2026-02-23', 'moved'],
        ['2026-02-26', 'planned'],
      ],
    );
  });
});

describe('the effort of a session', () => {
  it('is its rating, else the rating of its need, else 7', () => {
    const effort = (plan: string, line: string) => {
      const { effort, effortFrom } = only(plan, line);
      return [effort, effortFrom];
    };
    assert.deepEqual(effort('- #need skill 1/week 5/10', '- [x] #session skill 9/10'), [9, 'session']);
    assert.deepEqual(effort('- #need skill 1/week 5/10', '- [x] #session skill'), [5, 'need']);
    assert.deepEqual(effort('- #need skill 1/week', '- [x] #session skill'), [7, 'default']);
    assert.deepEqual(effort('- #need skill 1/week 0/10', '- [x] #session skill'), [0, 'need']);
  });
});

describe('the minutes of a session', () => {
  for (const [plan, line, minutes] of [
    ['', '18:30-19:45', 75],
    ['', '23:00-00:30', 90],
    ['', '18:30-19:45 60min', 75],
    ['', '1h15', 75],
    ['- #need skill 1/week 50min', '18:30', 50],
    ['- #need skill 1/week 50min\n- #routine press 40min', 'routine:press', 50],
    ['- #routine press 40min', 'routine:press', 40],
    ['- #routine press 40min\n- #need skill 1/week routine:press', '', 40],
    ['', '18:30', undefined],
  ] as const) {
    it(`are ${minutes ?? 'unknown'} for "${line}"${plan && ` under "${plan}"`}`, () => {
      assert.equal(only(plan, `- [x] #session skill ${line}`).minutes, minutes);
    });
  }
});

describe('the regions of a session', () => {
  it('are those of its routine, or of the routine of the need it counts for', () => {
    const plan =
      '- #routine press regions:shoulders,wrists\n- #routine legs regions:hips\n- #need skill 1/week routine:press';
    assert.deepEqual(only(plan, '- [x] #session skill').regions, ['shoulders', 'wrists']);
    assert.deepEqual(only(plan, '- [x] #session skill routine:legs').regions, ['hips']);
    assert.deepEqual(only(plan, '- [x] #session skill routine:unwritten').regions, []);
    assert.deepEqual(only(plan, '- [x] #session strength').regions, []);
  });
});

describe('the goals of a session', () => {
  it('are those that it names, whether they have a need or not, else those of its needs', () => {
    const plan = '- #goal low-split\n- #need flexibility 1/week\n- #goal handstand';
    assert.deepEqual(only(plan, '- [x] #session flexibility').goals, ['low-split']);
    assert.deepEqual(only(plan, '- [x] #session flexibility for:handstand').goals, ['handstand']);
    assert.deepEqual(only(plan, '- [x] #session strength').goals, []);
  });
});

describe('the times of a session', () => {
  const minutes = (line: string, zone = 'UTC') => {
    const times = sessionTimes(only('', `- [x] #session skill ${line}`), zone);
    return times && [times.start - sessionStart(zone), times.end - times.start];
  };
  /** 2026-02-24 18:00 on the clock of the zone, in minutes since 1970. */
  const sessionStart = (zone: string) => {
    const hoursBehind = zone === 'America/New_York' ? 5 : 0;
    return Date.UTC(2026, 1, 24, 18 + hoursBehind) / 60_000;
  };

  it('run from its time for its length, or to the end of its span', () => {
    assert.deepEqual(minutes('18:00 75min'), [0, 75]);
    assert.deepEqual(minutes('18:30-19:30'), [30, 60]);
    assert.deepEqual(minutes('23:00-00:30'), [300, 90]);
    assert.deepEqual(minutes('18:00'), [0, 0]);
    assert.deepEqual(minutes('18:00 75min', 'America/New_York'), [0, 75]);
  });

  it('are unknown without a time', () => {
    assert.equal(minutes('75min'), undefined);
  });
});
