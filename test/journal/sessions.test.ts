import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { day, indexOf, inShort, sessionsOf } from './index-of';

/** Kept note and copied notes of each duplicate of the day. */
function duplicates(notes: Readonly<Record<string, string>>, date = '2026-02-24') {
  return indexOf(notes)
    .duplicateSessions(day(date), day(date))
    .map(({ kept, copies }) => [kept.note, ...copies.map((copy) => copy.note)]);
}

describe('the sessions of a journal', () => {
  it('stand in day notes, in order of day and time, those without a time last', () => {
    const journal = indexOf({
      '2026-02-25.md': '- [ ] #session skill 07:00\n',
      '2026-02-24 evening.md': '- [ ] #session strength 18:30\n',
      '2026-02-24.md':
        '- [ ] #session recovery\n- [ ] #session flexibility 20:00\n- [ ] #session hoop 09:00\n',
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-24', '2026-02-25'), [
      '2026-02-24 at 9 hoop',
      '2026-02-24 at 18.5 strength',
      '2026-02-24 at 20 flexibility',
      '2026-02-24 recovery',
      '2026-02-25 at 7 skill',
    ]);
    assert.deepEqual(sessionsOf(journal, '2026-02-25'), ['2026-02-25 at 7 skill']);
    assert.deepEqual(sessionsOf(journal, '2026-02-26', '2026-12-31'), []);
  });

  it('have a day and a kind', () => {
    const journal = indexOf({
      'goals.md': '- [ ] #session flexibility 18:30\n',
      '2026-W09.md': '- [ ] #session flexibility 18:30\n',
      '2026-02-30.md': '- [ ] #session flexibility 18:30\n',
      '2026-02-24.md': '- [ ] #session 18:30 75min\n',
    });
    assert.deepEqual(journal.sessions(day('0001-01-01'), day('9998-12-31')), []);
  });

  it('answer for a period without an end', () => {
    const journal = indexOf({ '2026-02-24.md': '- #session skill\n' });
    assert.equal(journal.sessions(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY).length, 1);
  });
});

describe('a session that was moved', () => {
  it('stands on the new day as well, with the entry of its note', () => {
    const journal = indexOf({
      '2026-02-24.md': '- [ ] #session flexibility 18:30 moved:2026-02-26\n',
      '2026-02-26.md': '- [ ] #session strength 10:00\n',
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-24', '2026-02-26'), [
      '2026-02-24 at 18.5 flexibility',
      '2026-02-26 at 10 strength',
      '2026-02-26 at 18.5 flexibility from 2026-02-24',
    ]);
    const moved = journal.sessions(day('2026-02-26'), day('2026-02-26'))[1];
    assert.equal(moved?.note, '2026-02-24.md');
    assert.equal(moved?.day, day('2026-02-26'));
  });

  it('stands on a day that has no note', () => {
    const journal = indexOf({ '2026-02-24.md': '- [ ] #session skill moved:2026-03-02\n' });
    assert.deepEqual(sessionsOf(journal, '2026-03-02'), ['2026-03-02 skill from 2026-02-24']);
    assert.deepEqual(journal.span(), { first: day('2026-02-24'), last: day('2026-02-24') });
    assert.deepEqual(journal.notesOf(day('2026-03-02')), []);
  });

  it('stands there once, when a session of its kind is written there', () => {
    for (const written of ['[ ] #session skill', '[x] #session skill', '[ ] #session skill skipped:ill']) {
      const journal = indexOf({
        '2026-02-24.md': '- [ ] #session skill moved:2026-02-26\n',
        '2026-02-26.md': `- ${written}\n`,
      });
      assert.deepEqual(sessionsOf(journal, '2026-02-26'), ['2026-02-26 skill'], written);
    }
  });

  it('goes on from there when the written one was moved again', () => {
    const journal = indexOf({
      '2026-02-24.md': '- [ ] #session skill moved:2026-02-26\n',
      '2026-02-26.md': '- [ ] #session skill moved:2026-02-27\n',
    });
    assert.deepEqual(sessionsOf(journal, '2026-02-26', '2026-02-27'), [
      '2026-02-26 skill',
      '2026-02-27 skill from 2026-02-26',
    ]);
  });

  it('counts on its own day when it was moved to where it stands', () => {
    const journal = indexOf({ '2026-02-24.md': '- [ ] #session skill moved:2026-02-24\n' });
    assert.deepEqual(sessionsOf(journal, '2026-02-24'), [
      '2026-02-24 skill',
      '2026-02-24 skill from 2026-02-24',
    ]);
  });

  it('does not stand again when it was skipped as well', () => {
    const journal = indexOf({ '2026-02-24.md': '- [ ] #session skill moved:2026-02-26 skipped:ill\n' });
    assert.deepEqual(sessionsOf(journal, '2026-02-26'), []);
  });

  it('is moved once, when a copy of its note says so too', () => {
    const text = '- [ ] #session skill 18:30 moved:2026-02-26\n';
    const journal = indexOf({ '2026-02-24.md': text, '2026-02-24 (conflicted copy).md': text });
    assert.deepEqual(sessionsOf(journal, '2026-02-26'), ['2026-02-26 at 18.5 skill from 2026-02-24']);
  });
});

describe('the same session in two notes of a day', () => {
  it('is one session when kind and start agree', () => {
    const notes = {
      '2026-02-24.md': '- [ ] #session flexibility 18:30 75min\n',
      '2026-02-24 (conflicted copy).md': '- [ ] #session flexibility 18:30 60min for:split -- other words\n',
    };
    assert.deepEqual(sessionsOf(indexOf(notes), '2026-02-24'), ['2026-02-24 at 18.5 flexibility']);
    assert.deepEqual(duplicates(notes), [['2026-02-24.md', '2026-02-24 (conflicted copy).md']]);
  });

  it('counts as done when one of them is', () => {
    const notes = {
      '2026-02-24.md': '- [ ] #session flexibility 18:30 75min\n',
      '2026-02-24 (conflicted copy).md': '- [x] #session flexibility 18:30 75min 8/10\n',
    };
    assert.deepEqual(duplicates(notes), [['2026-02-24 (conflicted copy).md', '2026-02-24.md']]);
  });

  it('is not done by a tick on one that was skipped or moved', () => {
    for (const field of ['skipped:ill', 'moved:2026-02-26']) {
      const notes = {
        '2026-02-24.md': '- [ ] #session skill 18:30\n',
        '2026-02-24 b.md': `- [x] #session skill 18:30 ${field}\n`,
      };
      assert.deepEqual(duplicates(notes), [['2026-02-24.md', '2026-02-24 b.md']]);
    }
  });

  it('is told by its text when there is no time, box, rating and remark apart', () => {
    const notes = {
      '2026-02-24.md': '- [ ] #session flexibility 75min 7/10 for:split\n',
      '2026-02-24 (2).md': '- [x] #session   flexibility 75min for:split -- hips level\n',
    };
    assert.deepEqual(duplicates(notes), [['2026-02-24 (2).md', '2026-02-24.md']]);
    const others = {
      '2026-02-24.md': '- [ ] #session flexibility 75min\n',
      '2026-02-24 (2).md': '- [ ] #session flexibility 60min\n',
    };
    assert.deepEqual(duplicates(others), []);
    assert.equal(sessionsOf(indexOf(others), '2026-02-24').length, 2);
  });

  it('is two sessions with another start, another kind, or on another day', () => {
    assert.deepEqual(
      duplicates({
        '2026-02-24.md': '- [ ] #session flexibility 18:30\n',
        '2026-02-24 b.md': '- [ ] #session flexibility 09:00\n- [ ] #session skill 18:30\n',
        '2026-02-25.md': '- [ ] #session flexibility 18:30\n',
      }),
      [],
    );
  });

  it('counts as often as one note writes it', () => {
    const twice = '- [ ] #session skill 18:30\n- [ ] #session skill 18:30\n';
    assert.equal(sessionsOf(indexOf({ '2026-02-24.md': twice }), '2026-02-24').length, 2);
    const journal = indexOf({
      '2026-02-24.md': twice,
      '2026-02-24 (2).md': twice,
      '2026-02-24 (3).md': twice,
    });
    assert.equal(sessionsOf(journal, '2026-02-24').length, 2);
    const found = journal.duplicateSessions(day('2026-02-24'), day('2026-02-24'));
    assert.deepEqual(
      found.map(({ kept, copies }) => [inShort(kept), copies.length]),
      [
        ['2026-02-24 at 18.5 skill', 2],
        ['2026-02-24 at 18.5 skill', 2],
      ],
    );
  });
});
