import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  comparePaths,
  folderOf,
  isBelow,
  isCalendarPath,
  isJournalFilePath,
  isJournalNote,
  isNotePath,
} from '../../src/journal/note-path';

describe('a path', () => {
  it('is a note when it is a Markdown file that is not hidden', () => {
    for (const path of ['a.md', 'log/2026/a.MD', 'log/a b.md', 'a.md/b.md', 'ö.md']) {
      assert(isNotePath(path), path);
    }
    for (const path of [
      '',
      'a.txt',
      'amd',
      'log',
      '.a.md',
      '.trash/a.md',
      'log/.git/a.md',
      'node_modules/x/a.md',
    ]) {
      assert(!isNotePath(path), path);
    }
  });

  it('is a calendar by its ending, and no note then', () => {
    for (const path of ['shifts.ics', 'work/Shifts.ICS', '2026-02-24.ics']) {
      assert(isCalendarPath(path) && isJournalFilePath(path) && !isNotePath(path), path);
    }
    for (const path of ['.shifts.ics', '.trash/shifts.ics', 'shifts.ics.txt', 'shifts']) {
      assert(!isCalendarPath(path) && !isJournalFilePath(path), path);
    }
    assert(isJournalFilePath('2026-02-24.md'));
  });

  it('lies below the folders around it, and only those', () => {
    assert(isBelow('log/a.md', 'log'));
    assert(isBelow('log/deep/a.md', 'log'));
    assert(isBelow('a.md', ''));
    assert(!isBelow('logs/a.md', 'log'));
    assert(!isBelow('log', 'log'));
    assert.equal(folderOf('log/deep/a.md'), 'log/deep');
    assert.equal(folderOf('a.md'), '');
  });

  it('makes a journal of its folder by its name', () => {
    assert(isJournalNote('heron/journal.md'));
    assert(isJournalNote('Journal.md'));
    assert(!isJournalNote('my journal.md'));
    assert(!isJournalNote('journal.md/a.md'));
  });

  it('sorts a note before its copies', () => {
    const sorted = [
      '2026-02-24 evening.md',
      'goals (conflicted copy).md',
      '2026-02-25.md',
      'goals.md',
      'a/goals.md',
      '2026-02-24.md',
    ].sort(comparePaths);
    assert.deepEqual(sorted, [
      '2026-02-24.md',
      '2026-02-24 evening.md',
      '2026-02-25.md',
      'a/goals.md',
      'goals.md',
      'goals (conflicted copy).md',
    ]);
  });

  it('has one order with any other', () => {
    assert.equal(comparePaths('a.md', 'a.md'), 0);
    assert.equal(comparePaths('a.MD', 'a.md') + comparePaths('a.md', 'a.MD'), 0);
    assert.notEqual(comparePaths('a.MD', 'a.md'), 0);
  });
});
