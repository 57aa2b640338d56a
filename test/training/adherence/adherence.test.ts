import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { addDays, dayNumber, isoDate } from '../../../src/notation/time/iso-date';
import { adherenceFigures } from '../../../src/training/adherence/adherence-figures';
import { adherenceShare } from '../../../src/training/adherence/adherence-share';
import { blockWeek } from '../../../src/training/adherence/block-week';
import { type PlannedSession, plannedSessions } from '../../../src/training/adherence/planned-sessions';
import { dropLimit, slide } from '../../../src/training/adherence/slide';
import { latestBreak } from '../../../src/training/adherence/training-break';
import { weekReader } from '../../../src/training/training-week';
import { printed } from '../../published/printed';
import { date } from '../dates';
import { journalFromNotes } from '../journal-from-text';

type Notes = Readonly<Record<string, string>>;

/** The planned sessions up to the day before `today`. */
function planned(notes: Notes, today = '2026-03-02'): readonly PlannedSession[] {
  const journal = journalFromNotes(notes);
  const first = journal.span()?.first ?? 0;
  return plannedSessions(weekReader(journal, date(today)), first, dayNumber(date(today)) - 1);
}

const week: Notes = {
  '2026-02-23.md': '- [x] #session flexibility 18:30 75min 7/10\n',
  '2026-02-24.md': '- [ ] #session skill 08:00 45min skipped:tired\n- [x] #session strength 13:00 45min\n',
  '2026-02-25.md': '- [ ] #session flexibility 18:30 75min skipped:ill\n',
  '2026-02-26.md': '- [ ] #session strength 18:30 60min\n',
  '2026-02-27.md': '- [ ] #session skill 45min moved:2026-02-28\n',
  '2026-02-28.md': '- [x] #session skill 45min\n',
  '2026-03-01.md': '- [ ] #session recovery 17:00 45min skipped:injured\n',
  '2026-03-02.md': '- [ ] #session flexibility 18:30 75min\n',
};

describe('done of planned', () => {
  it('counts done, missed and unmarked ones; what was moved counts where it went', () => {
    assert.deepEqual(
      planned(week).map(({ facts, outcome, reason }) => [facts.session.date.slice(8), outcome, reason]),
      [
        ['23', 'done', undefined],
        ['24', 'missed', 'tired'],
        ['24', 'done', undefined],
        ['25', 'excused', 'ill'],
        ['26', 'unmarked', undefined],
        ['28', 'done', undefined],
        ['01', 'excused', 'injured'],
      ],
    );
  });

  it('leaves ill, injured, work and travel out of the number, and shows them apart with the reasons', () => {
    const found = adherenceShare(planned(week));
    assert.deepEqual([found.n, found.done, found.missed, found.unmarked, found.excused], [5, 3, 1, 1, 2]);
    assert.deepEqual(found.reasons, [
      { reason: 'ill', count: 1 },
      { reason: 'injured', count: 1 },
      { reason: 'tired', count: 1 },
    ]);
    for (const reason of ['ill', 'injured', 'work', 'travel', 'sore', 'tired', 'other', 'no-babysitter']) {
      const [one] = planned({ '2026-02-23.md': `- [ ] #session skill skipped:${reason}\n` });
      assert.equal(
        one?.outcome,
        ['ill', 'injured', 'work', 'travel'].includes(reason) ? 'excused' : 'missed',
      );
    }
  });

  it('has Wilson’s interval: 3 of 4 is 0.300642 to 0.954413 [C]', () => {
    const { share } = adherenceShare(planned(week).filter(({ outcome }) => outcome !== 'unmarked'));
    assert(!('status' in share));
    assert.deepEqual([share.successes, share.n], [3, 4]);
    printed(share.lower, '0.300642');
    printed(share.upper, '0.954413');
  });

  it('has no share without a planned session', () => {
    assert.deepEqual(adherenceShare([]).share, {
      status: 'not-estimable',
      n: 0,
      reason: 'no-planned-sessions',
      missing: [{ what: 'sessions', have: 0, need: 1 }],
    });
  });

  it('is told by week, month, kind, weekday and time of day', () => {
    const { byWeek, byMonth, byKind, byWeekday, byTimeOfDay } = adherenceFigures(planned(week));
    const short = (groups: readonly { key: string | number; done: number; n: number; excused: number }[]) =>
      groups.map(({ key, done, n, excused }) => `${key}: ${done}/${n}${excused ? ` and ${excused}` : ''}`);
    assert.deepEqual(short(byWeek), ['2026-W09: 3/5 and 2']);
    assert.deepEqual(short(byMonth), ['2026-02: 3/5 and 1', '2026-03: 0/0 and 1']);
    assert.deepEqual(short(byKind), [
      'flexibility: 1/1 and 1',
      'recovery: 0/0 and 1',
      'skill: 1/2',
      'strength: 1/2',
    ]);
    assert.deepEqual(short(byWeekday), [
      '1: 1/1',
      '2: 1/2',
      '3: 0/0 and 1',
      '4: 0/1',
      '6: 1/1',
      '7: 0/0 and 1',
    ]);
    assert.deepEqual(short(byTimeOfDay), [
      'morning: 0/1',
      'afternoon: 1/1',
      'evening: 1/2 and 2',
      'no-time: 1/1',
    ]);
  });

  it('adds up, whatever the sessions', () => {
    const marks = [
      '- [x] #session skill',
      '- [ ] #session skill',
      '- [ ] #session flexibility skipped:ill',
      '- [ ] #session strength skipped:sore',
    ];
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(40), fc.constantFrom(...marks)), { maxLength: 40 }), (lines) => {
        const notes: Record<string, string> = { 'journal.md': '' };
        for (const [index, [day, line]] of lines.entries()) {
          const path = `${addDays(date('2026-01-05'), day)}.md`;
          notes[path] = `${notes[path] ?? ''}${line} ${10 + (index % 12)}:${10 + index} 30min\n`;
        }
        const { all, ...parts } = adherenceFigures(planned(notes));
        for (const groups of Object.values(parts)) {
          for (const field of ['n', 'done', 'missed', 'unmarked', 'excused'] as const) {
            assert.equal(
              groups.reduce((sum, group) => sum + group[field], 0),
              all[field],
            );
          }
        }
        if (!('status' in all.share))
          assert.ok(all.share.lower <= all.share.proportion && all.share.proportion <= all.share.upper);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

/** Sessions on successive days: x done, - missed, o excused, ? unmarked. */
function sessionsOf(pattern: string, first = '2026-01-05'): Notes {
  const lines: Readonly<Record<string, string>> = {
    x: '- [x] #session skill 45min\n',
    '-': '- [ ] #session skill 45min skipped:tired\n',
    o: '- [ ] #session skill 45min skipped:ill\n',
    '?': '- [ ] #session skill 45min\n',
    ' ': 'Nothing planned.\n',
  };
  return Object.fromEntries(
    [...pattern].map((mark, index) => [`${addDays(date(first), index)}.md`, lines[mark] ?? '']),
  );
}

function slideOf(pattern: string, daysLater = 1) {
  const notes = sessionsOf(pattern);
  const today = addDays(date('2026-01-05'), pattern.length - 1 + daysLater);
  return slide(planned(notes, today), dayNumber(today));
}

const usual = 'xxxxxxxxx-xxxxxxxxx-xxxxxxxxx-';

describe('a slide', () => {
  it('shows when the score of done -1 and missed +2 comes to its limit', () => {
    const found = slideOf(`${usual}xx---`);
    assert(found.status === 'estimated');
    assert.deepEqual([found.score, found.limit, found.isSliding], [6, 6, true]);
    assert.deepEqual([found.recent.done, found.recent.n], [0, 3]);
    assert.equal(found.since, '2026-02-06');
    const before = slideOf(`${usual}xx--`);
    assert(before.status === 'estimated' && !before.isSliding);
  });

  it('is held against the share that was usual before it, with how often chance alone would do it', () => {
    const found = slideOf(`${usual}xx---`);
    assert(found.status === 'estimated');
    assert.deepEqual([found.usual.successes, found.usual.n], [29, 32]);
    assert.ok(found.sessionsToFalseAlarm > 500);
  });

  it('needs twenty sessions', () => {
    const found = slideOf('xxxxxxxxxxxxxxxx---');
    assert(found.status === 'not-estimable');
    assert.deepEqual(found.missing, [{ what: 'sessions', have: 19, need: 20 }]);
  });

  it('takes all of them where those before it are too few, which makes it harder to see', () => {
    const found = slideOf('xxxxxxxxxxxxxxx-------');
    assert(found.status === 'estimated');
    assert.deepEqual([found.usual.successes, found.usual.n, found.isSliding], [15, 22, true]);
    assert.ok(found.limit > 6);
  });

  it('leaves out what was excused', () => {
    const found = slideOf(`${usual}xxooooooo`);
    assert(found.status === 'estimated');
    assert.deepEqual([found.score, found.isSliding], [0, false]);
  });

  it('gives an unmarked session a week to be ticked', () => {
    const soon = slideOf(`${usual}xx???`);
    assert(soon.status === 'estimated');
    assert.equal(soon.isSliding, false);
    const later = slideOf(`${usual}xx???`, 8);
    assert(later.status === 'estimated');
    assert.deepEqual([later.isSliding, later.recent.unmarked], [true, 3]);
  });

  it('begins again after two weeks without a session that counts', () => {
    const found = slideOf(`${usual}xx-- ${' '.repeat(13)}--`);
    assert(found.status === 'estimated');
    assert.deepEqual([found.score, found.n], [4, 2]);
  });

  it('is not told where chance does as much: the limit rises, and below 60 % there is none', () => {
    assert.deepEqual([0.95, 0.8, 0.75, 0.7, 0.6, 0.5].map(dropLimit), [6, 6, 7, 9, 17, undefined]);
    const found = slideOf('x-'.repeat(20));
    assert(found.status === 'not-estimable');
    assert.equal(found.reason, 'usual-share-too-low');
  });
});

describe('a break', () => {
  const found = (pattern: string) => {
    const notes = sessionsOf(pattern);
    const today = addDays(date('2026-01-05'), pattern.length);
    return latestBreak(planned(notes, today), dayNumber(today));
  };

  it('is two weeks or more without a done session, over or not', () => {
    assert.equal(found(`xxx${'-'.repeat(12)}`), undefined);
    assert.deepEqual(found(`xxx${'-'.repeat(13)}`), { lastDone: '2026-01-07', days: 14 });
    assert.deepEqual(found(`xxx${' '.repeat(13)}xx`), {
      lastDone: '2026-01-07',
      days: 14,
      backOn: '2026-01-21',
    });
  });
});

describe('the week of a block', () => {
  const at = (goals: string, today: string, backOn?: string) => {
    const { plan } = journalFromNotes({ 'goals.md': goals });
    const lastBreak =
      backOn === undefined ? undefined : { lastDone: isoDate(0), days: 20, backOn: date(backOn) };
    const block = blockWeek(plan, date(today), lastBreak);
    return block && `${block.week} by ${block.by}${block.reviewEarly ? ', early' : ''}`;
  };

  it('is counted from the latest goal that was begun, or from the return after a break', () => {
    const goals = '- #goal one from:2026-01-07 by:2026-06-30\n- #goal two from:2026-02-02 by:2026-06-30';
    assert.equal(at(goals, '2026-02-03'), '1 by goal');
    assert.equal(at(goals, '2026-02-03', '2026-01-20'), '1 by goal');
    assert.equal(at('- #goal one from:2026-01-07', '2026-02-03', '2026-01-20'), '3 by return, early');
    assert.equal(at('- #goal one', '2026-02-03'), undefined);
    assert.equal(at('- [x] #goal one from:2026-01-07', '2026-02-03'), undefined);
  });

  // Common practice, no source.
  it('asks for an early look back in weeks three, four, seven and eight', () => {
    const weeks = Array.from({ length: 10 }, (_, week) =>
      at('- #goal one from:2026-01-05', addDays(date('2026-01-08'), 7 * week)),
    );
    assert.deepEqual(
      weeks.flatMap((words, index) => (words?.endsWith('early') ? [index + 1] : [])),
      [3, 4, 7, 8],
    );
  });
});
