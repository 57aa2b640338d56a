import assert from 'node:assert/strict';
import {
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, it } from 'mocha';
import { JournalCollection } from '../../src/journal/journal-collection';
import { type DiskCalls, DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import { sessionsOf } from './index-of';

const skill = '- [ ] #session skill\n';

describe('notes on a disk', () => {
  let folder = '';

  beforeEach(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'notes-')));
  });

  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  function write(path: string, content: string | Uint8Array = skill): void {
    mkdirSync(join(folder, dirname(path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }

  async function listed(source = new DiskNoteSource(folder)): Promise<string[]> {
    return (await source.list()).map(({ path }) => path).sort();
  }

  it('are the Markdown files at any depth, with size and time', async () => {
    write('journal.md', 'äöü');
    write('log/2026/2026-02-24.MD');
    write('log/plan.txt');
    write('log/picture.md.png');
    assert.deepEqual(await listed(), ['journal.md', 'log/2026/2026-02-24.MD']);
    const [journal] = (await new DiskNoteSource(folder).list()).filter(({ path }) => path === 'journal.md');
    assert.equal(journal?.size, 6);
    assert((journal?.modified ?? 0) > 0);
  });

  it('have calendar files beside them, in whatever encoding', async () => {
    write('journal.md', '');
    write('work/Shifts.ICS', Uint8Array.of(0x66, 0xfc, 0x72));
    write('work/.shifts.ics');
    assert.deepEqual(await listed(), ['journal.md', 'work/Shifts.ICS']);
    assert.equal(await new DiskNoteSource(folder).read('work/Shifts.ICS'), 'f\ufffdr');
  });

  it('are not looked for in hidden folders and installed packages', async () => {
    write('.git/2026-02-24.md');
    write('node_modules/some-package/README.md');
    write('deep/.trash/2026-02-24.md');
    write('.2026-02-24.md');
    write('2026-02-25.md');
    assert.deepEqual(await listed(), ['2026-02-25.md']);
  });

  it('may lie in a folder named like a note, which is none itself', async () => {
    write('2026-02-24.md/2026-02-25.md');
    assert.deepEqual(await listed(), ['2026-02-24.md/2026-02-25.md']);
    assert.equal(await new DiskNoteSource(folder).read('2026-02-24.md'), undefined);
  });

  it('are found once where links make a loop', async () => {
    write('log/2026-02-24.md');
    symlinkSync(folder, join(folder, 'log', 'again'));
    symlinkSync(join(folder, 'log'), join(folder, 'a-link-first'));
    symlinkSync('itself', join(folder, 'itself'));
    symlinkSync('itself.md', join(folder, 'itself.md'));
    symlinkSync('nowhere.md', join(folder, 'dangling.md'));
    assert.deepEqual(await listed(), ['log/2026-02-24.md']);
    assert.equal(await new DiskNoteSource(folder).read('itself.md'), undefined);
    assert.equal(await new DiskNoteSource(folder).read('dangling.md'), undefined);
  });

  it('may be linked to, singly or as a folder', async () => {
    const other = mkdtempSync(join(tmpdir(), 'other-notes-'));
    try {
      writeFileSync(join(other, '2026-02-24.md'), skill);
      symlinkSync(other, join(folder, 'linked'));
      symlinkSync(join(other, '2026-02-24.md'), join(folder, '2026-02-25.md'));
      symlinkSync(other, join(folder, '.hidden'));
      assert.deepEqual(await listed(), ['2026-02-25.md', 'linked/2026-02-24.md']);
      assert.equal(await new DiskNoteSource(folder).read('2026-02-25.md'), skill);
    } finally {
      rmSync(other, { recursive: true });
    }
  });

  it('are read without their byte order mark, everything else as it is', async () => {
    write('2026-02-24.md', '\ufeff# Day\r\n\r- [x] #session 柔軟');
    write('empty.md', '');
    const source = new DiskNoteSource(folder);
    assert.equal(await source.read('2026-02-24.md'), '# Day\r\n\r- [x] #session 柔軟');
    assert.equal(await source.read('empty.md'), '');
  });

  it('that are no text are no notes', async () => {
    write('picture.md', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a));
    write('latin.md', Uint8Array.of(0x66, 0xfc, 0x72));
    write('zeros.md', 'a\0b');
    const source = new DiskNoteSource(folder);
    for (const path of ['picture.md', 'latin.md', 'zeros.md', 'missing.md', 'no/such/folder.md']) {
      assert.equal(await source.read(path), undefined, path);
    }
  });

  it('may have 5 MB, and are passed over above 20 MB', async () => {
    const long = 'Words, and more words.\n'.repeat(230_000);
    assert(long.length > 5_000_000);
    write('long.md', long);
    write('huge.md', '');
    truncateSync(join(folder, 'huge.md'), 20 * 1024 * 1024 + 1);
    const source = new DiskNoteSource(folder);
    assert.deepEqual(await listed(source), ['long.md']);
    assert.equal(await source.read('long.md'), long);
    assert.equal(await source.read('huge.md'), undefined);
  });

  it('are none where there is no folder, or only a file', async () => {
    write('file.md');
    assert.deepEqual(await listed(new DiskNoteSource(join(folder, 'nowhere'))), []);
    assert.deepEqual(await listed(new DiskNoteSource(join(folder, 'file.md'))), []);
  });

  it('stop being looked for when asked', async () => {
    write('a/2026-02-24.md');
    assert.deepEqual(await new DiskNoteSource(folder).list(() => true), []);
  });

  it('are told of by whoever watches', () => {
    const source = new DiskNoteSource(folder);
    const told: unknown[] = [];
    const stop = source.onChange((change) => told.push(change));
    source.tell({ kind: 'changed', path: 'a.md' });
    stop.dispose();
    source.tell({ kind: 'removed', path: 'a.md' });
    assert.deepEqual(told, [{ kind: 'changed', path: 'a.md' }]);
  });

  it('make a journal together, whatever lies beside them', async () => {
    write('2026-02-24.md', '- [x] #session flexibility 18:30\r- [x] #session skill 20:00');
    write('2026-02-24 (conflicted copy).md', '- [ ] #session flexibility 18:30\n');
    write('2026-02-24 evening.md', '- [ ] #session recovery 21:00\n');
    write('2026-02-25.md', Uint8Array.of(0xff, 0xfe, 0x23, 0));
    write('2026-02-26.md', '');
    write('2026-02-27.md/words.txt', '');
    write('2026-02-30.md');
    symlinkSync(folder, join(folder, 'loop'));
    const collection = new JournalCollection(new DiskNoteSource(folder));
    await collection.load();
    const [journal, ...more] = collection.journals();
    assert(journal);
    assert.deepEqual(more, []);
    assert.deepEqual(sessionsOf(journal, '2026-02-01', '2026-03-31'), [
      '2026-02-24 at 18.5 flexibility',
      '2026-02-24 at 20 skill',
      '2026-02-24 at 21 recovery',
    ]);
  });
});

describe('a disk that refuses', () => {
  const file = { isFile: true, isFolder: false, size: 10, modified: 1 };
  const disk: DiskCalls = {
    entries: (folder) => {
      if (folder.endsWith('locked')) throw new Error('no permission');
      if (folder !== 'root') return [];
      return ['2026-02-24.md', '2026-02-25.md', '2026-02-26.md', 'locked'].map((name) => ({
        name,
        isFolder: name === 'locked',
        isLink: false,
      }));
    },
    status: (path) => {
      if (path.endsWith('25.md')) throw new Error('gone meanwhile');
      return file;
    },
    realPath: (path) => path,
    bytes: (path) => {
      if (path.endsWith('26.md')) throw new Error('no permission');
      return new TextEncoder().encode(skill);
    },
  };

  it('hides what it refuses and nothing else', async () => {
    const source = new DiskNoteSource('root', disk);
    assert.deepEqual(
      (await source.list()).map(({ path }) => path),
      ['2026-02-24.md', '2026-02-26.md'],
    );
    const collection = new JournalCollection(source);
    assert.equal(await collection.load(), true);
    assert.deepEqual(
      [...(collection.journals()[0]?.notes() ?? [])].map(({ path }) => path),
      ['2026-02-24.md'],
    );
  });

  it('is never asked for what is no file: a pipe would not answer', async () => {
    const asked: string[] = [];
    const source = new DiskNoteSource('root', {
      ...disk,
      entries: () => [{ name: 'pipe.md', isFolder: false, isLink: false }],
      status: () => ({ ...file, isFile: false }),
      bytes: (path) => {
        asked.push(path);
        return new Uint8Array();
      },
    });
    assert.deepEqual(await source.list(), []);
    assert.equal(await source.read('pipe.md'), undefined);
    assert.deepEqual(asked, []);
  });
});
