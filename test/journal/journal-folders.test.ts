import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalFolders, journalFolders } from '../../src/journal/journal-folders';

describe('the journals of a folder', () => {
  it('are the folders with a journal note', () => {
    assert.deepEqual(
      journalFolders(['swift/journal.md', 'heron/Journal.md', 'heron/2026-02-24.md', '2026-02-24.md']),
      ['heron', 'swift'],
    );
    assert.deepEqual(journalFolders(['journal.md']), ['']);
  });

  it('are one when there are day notes and no journal note', () => {
    assert.deepEqual(journalFolders(['log/2026-02-24.md', 'README.md']), ['']);
  });

  it('are none among other notes', () => {
    assert.deepEqual(journalFolders(['README.md', 'docs/guide.md', '2026-W09.md', '2026-02-30.md']), []);
    assert.deepEqual(journalFolders([]), []);
  });
});

describe('the journal around a note', () => {
  it('is the deepest one', () => {
    const folders = new JournalFolders();
    for (const path of ['journal.md', 'roster/heron/journal.md']) folders.add(path);
    assert.equal(folders.around('2026-02-24.md'), '');
    assert.equal(folders.around('roster/2026-02-24.md'), '');
    assert.equal(folders.around('roster/heron/2026-02-24.md'), 'roster/heron');
    assert.equal(folders.around('roster/heron/log/deep/2026-02-24.md'), 'roster/heron');
    assert.equal(folders.around('roster/heronry/2026-02-24.md'), '');
  });

  it('is none beside the journals', () => {
    const folders = new JournalFolders();
    folders.add('heron/journal.md');
    assert.equal(folders.around('2026-02-24.md'), undefined);
    assert.equal(folders.around('swift/2026-02-24.md'), undefined);
  });

  it('follows notes that come and go, and says when to look again', () => {
    const folders = new JournalFolders();
    assert.equal(folders.add('README.md'), false);
    assert.equal(folders.around('README.md'), undefined);
    assert.equal(folders.add('a/2026-02-24.md'), true);
    assert.equal(folders.add('a/2026-02-25.md'), false);
    assert.equal(folders.around('README.md'), '');
    assert.equal(folders.add('a/journal.md'), true);
    assert.equal(folders.around('README.md'), undefined);
    assert.equal(folders.remove('a/2026-02-24.md'), false);
    assert.equal(folders.remove('a/journal.md'), true);
    assert.equal(folders.around('README.md'), '');
    assert.equal(folders.remove('a/2026-02-25.md'), true);
    assert.deepEqual(folders.all(), []);
  });

  it('never changes without a word', () => {
    const path = fc.constantFrom(
      'journal.md',
      'Journal.md',
      'a/journal.md',
      'a/b/journal.md',
      '2026-02-24.md',
      'a/2026-02-25.md',
      'x.md',
    );
    fc.assert(
      fc.property(fc.array(path, { maxLength: 20 }), (toggles) => {
        const folders = new JournalFolders();
        const there = new Set<string>();
        for (const one of toggles) {
          const before = folders.all();
          const isGone = there.delete(one);
          if (!isGone) there.add(one);
          const changed = isGone ? folders.remove(one) : folders.add(one);
          assert.deepEqual(folders.all(), journalFolders(there));
          if (!changed) assert.deepEqual(folders.all(), before);
        }
      }),
      { seed: 2026 },
    );
  });
});
