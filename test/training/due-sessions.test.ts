import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import type { Journal } from '../../src/journal/journal';
import { dueSessions, overdueSessions } from '../../src/training/due-sessions';
import { nextSession } from '../../src/training/next-session';
import type { SessionFacts } from '../../src/training/session-facts';
import { date, journalOf } from '../planning/journal-of';

const inShort = (facts: readonly SessionFacts[]) =>
  facts.map(({ session, state }) => `${session.date} ${session.kind} ${state}`);

describe('sessions that are due', () => {
  // A Wednesday.
  const today = date('2026-02-25');
  const notes = {
    '2026-01-05.md': '- [ ] #session strength\n',
    '2026-02-23.md': '- [ ] #session skill moved:2026-02-24\n- [ ] #session flexibility skipped:ill\n',
    '2026-02-25.md':
      '- [ ] #session hoop 20:00\n- [x] #session flexibility 18:00\n- [ ] #session strength moved:2026-03-01\n',
    '2026-02-28.md': '- [x] #session recovery\n- [ ] #session flexibility\n',
    '2026-03-02.md': '- [ ] #session flexibility\n',
  };

  it('are those of earlier days of which nothing says what became of them, the latest first', () => {
    const due = dueSessions(journalOf(notes), today);
    assert.deepEqual(inShort(due.overdue), ['2026-02-24 skill overdue', '2026-01-05 strength overdue']);
  });

  it('are those of today, done ones as well, and not those moved away', () => {
    const due = dueSessions(journalOf(notes), today);
    assert.deepEqual(inShort(due.today), ['2026-02-25 flexibility done', '2026-02-25 hoop planned']);
  });

  it('are those still planned on later days of this week, moved ones where they went', () => {
    const due = dueSessions(journalOf(notes), today);
    assert.deepEqual(inShort(due.laterThisWeek), [
      '2026-02-28 flexibility planned',
      '2026-03-01 strength planned',
    ]);
  });

  it('are counted in order of day', () => {
    assert.deepEqual(
      overdueSessions(journalOf(notes), today).map((session) => session.date),
      ['2026-01-05', '2026-02-24'],
    );
    assert.deepEqual(overdueSessions(journalOf({}), today), []);
  });
});

describe('the next session for a goal', () => {
  const today = date('2026-02-25');
  const next = (journal: Journal, goal: string) => {
    const found = nextSession(journal, goal, today);
    return found && inShort([found])[0];
  };
  const goals = [
    '- #goal split by:2026-06-14',
    '- #need flexibility 1/week',
    '- #goal press by:2026-05-01',
    '- #need strength 1/week',
  ].join('\n');

  it('is the first planned one that names the goal or counts for one of its needs', () => {
    const journal = journalOf({
      'goals.md': goals,
      '2026-02-24.md': '- [ ] #session flexibility for:split\n',
      '2026-02-25.md': '- [x] #session flexibility for:split\n- [ ] #session strength\n',
      '2026-03-20.md': '- [ ] #session skill for:split\n',
    });
    assert.equal(next(journal, 'split'), '2026-03-20 skill planned');
    assert.equal(next(journal, 'press'), '2026-02-25 strength planned');
  });

  it('is none when none is planned', () => {
    assert.equal(next(journalOf({ 'goals.md': goals }), 'split'), undefined);
    assert.equal(next(journalOf({ 'goals.md': goals }), 'unknown'), undefined);
  });
});
