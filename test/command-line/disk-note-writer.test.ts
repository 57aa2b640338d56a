import assert from 'node:assert/strict';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, it } from 'mocha';
import { writeNotesToDisk } from '../../src/command-line/disk-note-writer';

describe('writing planned changes of notes to a disk', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'note-writer-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const bytes = (name: string) => readFileSync(join(folder, name));
  const put = (name: string, text: string) => writeFileSync(join(folder, name), text);

  it('creates notes with their folders, and edits only the planned characters', () => {
    put('2026-03-02.md', 'Rain.\r\n');
    const refusal = writeNotesToDisk(folder, [
      { kind: 'create', note: 'log/2026/2026-03-03.md', text: '# Tuesday\n' },
      {
        kind: 'edit',
        note: '2026-03-02.md',
        before: 'Rain.\r\n',
        edits: [{ range: { start: 7, end: 7 }, text: '- [ ] #session skill\r\n' }],
      },
    ]);
    assert.equal(refusal, undefined);
    assert.equal(bytes('log/2026/2026-03-03.md').toString(), '# Tuesday\n');
    assert.equal(bytes('2026-03-02.md').toString(), 'Rain.\r\n- [ ] #session skill\r\n');
    assert.deepEqual(readdirSync(folder).sort(), ['2026-03-02.md', 'log']);
  });

  it('keeps a byte order mark, and a link to a note elsewhere', () => {
    put('kept.txt', '\ufeffwords');
    symlinkSync(join(folder, 'kept.txt'), join(folder, '2026-03-02.md'));
    const refusal = writeNotesToDisk(folder, [
      {
        kind: 'edit',
        note: '2026-03-02.md',
        before: 'words',
        edits: [{ range: { start: 5, end: 5 }, text: ' and more' }],
      },
    ]);
    assert.equal(refusal, undefined);
    assert.equal(bytes('kept.txt').toString(), '\ufeffwords and more');
  });

  it('writes nothing at all when one note is stale, there already, gone, or outside', () => {
    put('2026-03-02.md', 'changed since');
    const create = { kind: 'create', note: '2026-03-04.md', text: 'new' } as const;
    const edit = (note: string) => ({ kind: 'edit', note, before: 'as it was', edits: [] }) as const;
    for (const [change, refusal] of [
      [edit('2026-03-02.md'), '"2026-03-02.md" has changed since it was read. Nothing was written.'],
      [edit('gone.md'), '"gone.md" has changed since it was read. Nothing was written.'],
      [
        { kind: 'create', note: '2026-03-02.md', text: '' },
        '"2026-03-02.md" is there already. Nothing was written.',
      ],
      [{ kind: 'create', note: '../out.md', text: '' }, '"../out.md" lies outside of the folder.'],
    ] as const) {
      assert.equal(writeNotesToDisk(folder, [create, change]), refusal);
      assert.deepEqual(readdirSync(folder), ['2026-03-02.md']);
    }
    assert.equal(bytes('2026-03-02.md').toString(), 'changed since');
  });

  it('says what was written when the disk refuses in between', () => {
    put('log', 'a file where a folder is wanted');
    const refusal = writeNotesToDisk(folder, [
      { kind: 'create', note: '2026-03-04.md', text: 'new' },
      { kind: 'create', note: 'log/2026-03-05.md', text: 'new' },
    ]);
    assert.match(
      refusal ?? '',
      /^"log\/2026-03-05\.md" could not be written \(.*\)\. Written before it: 2026-03-04\.md\.$/,
    );
  });
});
