import assert from 'node:assert/strict';
import { fillMessage } from '../../src/training/finding';
import { findingsIn, told } from './journal-from-text';

const gaps = (notes: Record<string, string>, today = '2026-02-25', zone = 'UTC') =>
  told('gap-too-short', notes, today, zone);

describe('gap-too-short', () => {
  it('counts hours from the end of one hard session of a kind to the start of the next', () => {
    assert.deepEqual(
      gaps({
        '2026-02-24.md': '- [x] #session flexibility 22:00 60min 8/10',
        '2026-02-25.md': '- [ ] #session flexibility 18:00 75min 7/10 -- front splits',
      }),
      [
        "2026-02-25.md | warning | #session flexibility 18:00 75min 7/10 | 19 h after Tuesday's flexibility session; the rule asks 48 h",
      ],
    );
  });

  it('counts minutes, so that a gap just below the rule does not read as kept', () => {
    const notes = (start: string) => ({
      '2026-02-23.md': '- [x] #session strength 18:00-19:00',
      '2026-02-25.md': `- [ ] #session strength ${start} 45min`,
    });
    assert.deepEqual(gaps(notes('18:59')), [
      "2026-02-25.md | warning | #session strength 18:59 45min | 47 h 59 min after Monday's strength session; the rule asks 48 h",
    ]);
    assert.deepEqual(gaps(notes('19:00')), []);
  });

  it('names the earlier session, and the rule when it is written', () => {
    const [finding] = findingsIn(
      {
        'journal.md': '- #rule flexibility gap:72h',
        '2026-02-23.md': '- [x] #session flexibility 18:00 60min 8/10',
        '2026-02-25.md': '- [ ] #session flexibility 19:00 60min 8/10',
        '2026-03-01.md': '- [ ] #session recovery',
      },
      '2026-02-25',
    );
    assert.equal(finding?.code, 'gap-too-short');
    assert.deepEqual(
      finding.related.map((place) => [place.note, fillMessage(place.message)]),
      [
        ['2026-02-23.md', 'The earlier flexibility session, 2026-02-23'],
        ['journal.md', 'The rule that asks for the gap'],
      ],
    );
    assert.deepEqual(finding.remedies, [
      'move-to-legal-day',
      'swap-with-another-day',
      'turn-into-recovery',
      'mark-skipped',
    ]);
    assert.deepEqual(finding.facts, {
      date: '2026-02-25',
      kind: 'flexibility',
      earlierDate: '2026-02-23',
      earlierKind: 'flexibility',
      askedBy: 'rule',
      subject: 'flexibility',
      countedIn: 'minutes',
      amount: 48 * 60,
      asked: 72 * 60,
    });
  });

  it('leaves what is done to be read, with nothing to mend', () => {
    const [finding] = findingsIn(
      {
        '2026-02-24.md': '- [x] #session flexibility 18:00 60min 8/10',
        '2026-02-25.md': '- [x] #session flexibility 18:00 60min 8/10',
        '2026-03-01.md': '- [ ] #session recovery',
      },
      '2026-02-25',
    );
    assert.equal(finding?.code, 'gap-too-short');
    assert.deepEqual(finding.remedies, []);
  });

  describe('without times', () => {
    it('counts whole days between the dates, and asks 48 h as two of them', () => {
      assert.deepEqual(
        gaps({
          '2026-02-23.md': '- [x] #session strength',
          '2026-02-24.md': '- [x] #session strength 18:00',
          '2026-02-26.md': '- [ ] #session strength 07:00',
        }),
        [
          "2026-02-24.md | warning | #session strength 18:00 | 1 day after Monday's strength session; the rule asks 48 h",
          "2026-02-26.md | warning | #session strength 07:00 | 37 h after Tuesday's strength session; the rule asks 48 h",
        ],
      );
    });

    it('asks a part of a day as a whole day', () => {
      const notes = (later: string) => ({
        'journal.md': '- #rule strength gap:36h',
        '2026-02-23.md': '- [x] #session strength',
        [later]: '- [ ] #session strength 07:00',
      });
      assert.equal(gaps(notes('2026-02-24.md')).length, 1);
      assert.equal(gaps(notes('2026-02-25.md')).length, 0);
    });

    it('says so when both stand on one day', () => {
      assert.deepEqual(
        gaps({ '2026-02-25.md': '- [ ] #session strength 07:00\n- [ ] #session strength -- again' }),
        [
          "2026-02-25.md | warning | #session strength | On the same day as Wednesday's strength session; the rule asks 48 h",
        ],
      );
    });

    it('takes the start for the end when nothing says how long the earlier one lasts', () => {
      assert.deepEqual(
        gaps({
          '2026-02-24.md': '- [x] #session strength 18:00',
          '2026-02-25.md': '- [ ] #session strength 18:00',
        }),
        [
          "2026-02-25.md | warning | #session strength 18:00 | 24 h after Tuesday's strength session; the rule asks 48 h",
        ],
      );
    });
  });

  describe('a gap asked in days', () => {
    it('is counted in whole days, so that the same hour every week keeps 7 d', () => {
      const notes = (later: string) => ({
        'goals.md': '- #goal hoop-drop by:2026-06-14\n- #need skill 1/week 60min 8/10 gap:7d',
        '2026-02-17.md': '- [x] #session skill 18:30 60min',
        [later]: '- [ ] #session skill 18:30 60min',
      });
      assert.deepEqual(gaps(notes('2026-02-24.md'), '2026-02-23'), []);
      assert.deepEqual(gaps(notes('2026-02-23.md'), '2026-02-23'), [
        '2026-02-23.md | warning | #session skill 18:30 60min | 6 days after the skill session of 2026-02-17; the need asks 7 days',
      ]);
    });
  });

  describe('is asked by', () => {
    it('a default rule for flexibility and one for strength, hard sessions only', () => {
      for (const kind of ['flexibility', 'strength']) {
        const notes = (first: string, second: string) => ({
          '2026-02-24.md': `- [x] #session ${kind} 18:00 60min ${first}`,
          '2026-02-25.md': `- [ ] #session ${kind} 18:00 60min ${second}`,
        });
        assert.equal(gaps(notes('7/10', '7/10')).length, 1);
        assert.equal(gaps(notes('', '')).length, 1, 'without a rating it counts as hard');
        assert.equal(gaps(notes('6/10', '7/10')).length, 0);
        assert.equal(gaps(notes('7/10', '6/10')).length, 0);
      }
      assert.deepEqual(
        gaps({
          '2026-02-24.md': '- [x] #session skill 18:00 60min 9/10',
          '2026-02-25.md': '- [ ] #session skill 18:00 60min 9/10',
        }),
        [],
      );
    });

    it('the rating of the need when the session has none', () => {
      const notes = (rating: string) => ({
        'journal.md': `- #need flexibility 2/week ${rating}`,
        '2026-02-24.md': '- [x] #session flexibility 18:00 60min',
        '2026-02-25.md': '- [ ] #session flexibility 18:00 60min',
      });
      assert.equal(gaps(notes('5/10')).length, 0);
      assert.equal(gaps(notes('8/10')).length, 1);
    });

    it('a kind of its own, which counts as what it is like as well', () => {
      assert.deepEqual(
        gaps({
          'journal.md': '- #kind oversplits like:flexibility',
          '2026-02-24.md': '- [x] #session oversplits 18:00 60min',
          '2026-02-25.md': '- [ ] #session flexibility 18:00 60min',
        }),
        [
          "2026-02-25.md | warning | #session flexibility 18:00 60min | 23 h after Tuesday's oversplits session; the rule asks 48 h",
        ],
      );
    });

    it('a written rule in place of the default', () => {
      const notes = (rule: string) => ({
        'journal.md': rule,
        '2026-02-24.md': '- [x] #session flexibility 18:00 60min 8/10',
        '2026-02-25.md': '- [ ] #session flexibility 18:00 60min 8/10',
      });
      assert.deepEqual(gaps(notes('- #rule flexibility gap:20h')), []);
      assert.equal(gaps(notes('- #rule strength gap:20h')).length, 1);
    });

    it('a region that the routines of both sessions load', () => {
      const notes = (routine: string) => ({
        'journal.md': [
          '- #rule shoulders gap:36h',
          '- #routine press skill regions:shoulders,wrists',
          '- #routine rings strength regions:shoulders',
          '- #routine legs strength regions:hips',
        ].join('\n'),
        '2026-02-24.md': '- [x] #session skill 18:00 60min 8/10 routine:press',
        '2026-02-25.md': `- [ ] #session strength 18:00 60min 8/10 routine:${routine}`,
      });
      assert.deepEqual(gaps(notes('rings')), [
        "2026-02-25.md | warning | #session strength 18:00 60min 8/10 routine:rings | 23 h after Tuesday's skill session; the rule asks 36 h",
      ]);
      assert.deepEqual(gaps(notes('legs')), []);
    });

    it('the routine of the need when the session names none', () => {
      assert.equal(
        gaps({
          'journal.md': [
            '- #rule shoulders gap:36h',
            '- #routine press regions:shoulders',
            '- #need skill 2/week routine:press',
          ].join('\n'),
          '2026-02-24.md': '- [x] #session skill 18:00 60min 8/10',
          '2026-02-25.md': '- [ ] #session skill 18:00 60min 8/10',
        }).length,
        1,
      );
    });

    it('hard, between any two hard sessions', () => {
      const notes = (second: string) => ({
        'journal.md': '- #rule hard gap:24h',
        '2026-02-24.md': '- [x] #session skill 18:00 60min 7/10',
        '2026-02-25.md': `- [ ] #session conditioning 18:00 60min ${second}`,
      });
      assert.equal(gaps(notes('7/10')).length, 1);
      assert.equal(gaps(notes('6/10')).length, 0);
    });

    it('any, at every effort', () => {
      assert.equal(
        gaps({
          'journal.md': '- #rule any gap:12h',
          '2026-02-24.md': '- [x] #session skill 21:00 60min 2/10',
          '2026-02-25.md': '- [ ] #session conditioning 07:00 60min 2/10',
        }).length,
        1,
      );
    });

    it('a goal, between sessions that count for it at every effort', () => {
      const notes = (second: string) => ({
        'goals.md':
          '- #goal low-split by:2026-06-14\n- #need flexibility 2/week\n\n# Rules\n\n- #rule low-split gap:48h',
        '2026-02-24.md': '- [x] #session flexibility 18:00 60min 4/10',
        '2026-02-25.md': second,
      });
      assert.equal(gaps(notes('- [ ] #session strength 18:00 60min 4/10 for:low-split')).length, 1);
      assert.equal(gaps(notes('- [ ] #session strength 18:00 60min 4/10')).length, 0);
    });

    it('a need with its own gap, between the sessions that count for that need', () => {
      const notes = (goal: string) => ({
        'goals.md': [
          '- #goal hoop-drop by:2026-06-14',
          '- #need skill 1/week gap:7d',
          '- #goal handstand by:2026-07-14',
          '- #need skill 2/week',
        ].join('\n'),
        '2026-02-23.md': '- [x] #session skill 18:00 60min 5/10 for:hoop-drop',
        '2026-02-27.md': `- [ ] #session skill 18:00 60min 5/10 for:${goal}`,
      });
      assert.deepEqual(gaps(notes('handstand')), []);
      assert.deepEqual(gaps(notes('hoop-drop')), [
        "2026-02-27.md | warning | #session skill 18:00 60min 5/10 for:hoop-drop | 4 days after Monday's skill session; the need asks 7 days",
      ]);
    });
  });

  it('tells one finding a pair: the rule that misses most', () => {
    assert.deepEqual(
      gaps({
        'journal.md': '- #rule hard gap:30h\n- #rule strength gap:60h',
        '2026-02-24.md': '- [x] #session strength 18:00 60min',
        '2026-02-25.md': '- [ ] #session strength 18:00 60min',
      }),
      [
        "2026-02-25.md | warning | #session strength 18:00 60min | 23 h after Tuesday's strength session; the rule asks 60 h",
      ],
    );
  });

  it('holds each session against the nearest earlier one only', () => {
    const found = gaps({
      '2026-02-23.md': '- [x] #session strength 18:00 60min',
      '2026-02-24.md': '- [x] #session strength 18:00 60min',
      '2026-02-25.md': '- [ ] #session strength 18:00 60min',
    });
    assert.deepEqual(
      found.map((line) => line.split(' | ')[3]),
      [
        "23 h after Monday's strength session; the rule asks 48 h",
        "23 h after Tuesday's strength session; the rule asks 48 h",
      ],
    );
  });

  it('looks into the week before, and names its date', () => {
    assert.deepEqual(
      gaps({
        '2026-02-22.md': '- [x] #session flexibility 18:00 60min 8/10',
        '2026-02-23.md': '- [x] #session flexibility 18:00 60min 8/10',
      }),
      [
        '2026-02-23.md | warning | #session flexibility 18:00 60min 8/10 | 23 h after the flexibility session of 2026-02-22; the rule asks 48 h',
      ],
    );
  });

  it('looks as many weeks back as the longest gap reaches', () => {
    assert.equal(
      gaps({
        'journal.md': '- #need skill 1/week gap:21d',
        '2026-02-04.md': '- [x] #session skill 18:00 60min',
        '2026-02-24.md': '- [x] #session skill 18:00 60min',
      }).length,
      1,
    );
  });

  it('leaves out what was skipped, and counts what was moved on its new day', () => {
    assert.deepEqual(
      gaps({
        '2026-02-23.md': '- [ ] #session strength 18:00 60min skipped:ill',
        '2026-02-24.md': '- [ ] #session strength 18:00 60min moved:2026-02-27',
        '2026-02-25.md': '- [ ] #session strength 18:00 60min',
      }),
      ["2026-02-24.md | warning | 2026-02-27 | 47 h after Wednesday's strength session; the rule asks 48 h"],
    );
  });

  it('never holds recovery against anything', () => {
    assert.deepEqual(
      gaps({
        'journal.md':
          '- #rule any gap:24h\n- #rule hard gap:24h\n- #rule recovery gap:24h\n- #kind massage like:recovery',
        '2026-02-24.md': '- [x] #session recovery 18:00 60min 9/10',
        '2026-02-25.md': '- [ ] #session massage 10:00 60min 9/10\n- [ ] #session strength 18:00 60min',
      }),
      [],
    );
  });
});
