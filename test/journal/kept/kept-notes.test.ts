import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalCollection } from '../../../src/journal/journal-collection';
import { decodeKeptNotes, encodeKeptNotes, type KeptFrom } from '../../../src/journal/kept/kept-notes';
import type { NoteFile, NoteSource } from '../../../src/journal/note-source';
import { expectedJournals } from '../expected-journals';
import { allOf } from '../index-of';

const from: KeptFrom = { reader: 'one', folder: 'file:///journal' };
const hour = 3_600_000;

/** A folder whose files have the times that are written. */
class TimedFolder implements NoteSource {
  readonly files = new Map<string, { readonly text: string; readonly modified: number }>();

  write(path: string, text: string, modified: number): void {
    this.files.set(path, { text, modified });
  }

  async list(): Promise<readonly NoteFile[]> {
    return [...this.files].map(([path, { text, modified }]) => ({
      path,
      size: new TextEncoder().encode(text).length,
      modified,
    }));
  }

  async read(path: string): Promise<string | undefined> {
    return this.files.get(path)?.text;
  }

  onChange() {
    return { dispose: () => {} };
  }

  texts(): ReadonlyMap<string, string> {
    return new Map([...this.files].map(([path, { text }]) => [path, text]));
  }
}

/** What a session that reads the folder at `now` leaves behind. */
async function keep(folder: TimedFolder, now: number, keptFrom = from): Promise<Uint8Array> {
  const collection = new JournalCollection(folder);
  await collection.load();
  return encodeKeptNotes(collection.readFiles(), keptFrom, now);
}

/** The collection of the next session, not yet loaded any further than what was kept goes. */
async function next(folder: TimedFolder, bytes: Uint8Array, open: ReadonlyMap<string, string> = new Map()) {
  const collection = new JournalCollection(folder);
  for (const [path, text] of open) collection.setOpenText(path, text);
  await collection.load({ kept: decodeKeptNotes(bytes, from), first: (path) => !/\d{4}/.test(path) });
  return collection;
}

const journal = {
  'journal.md': '#athlete "Ilka"\n',
  'goals.md': '- [ ] #goal split by:2026-06-14\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week\n',
  '2026-02-24.md':
    '\ufeff- [x] #session flexibility 18:30 75min 7/10 with:coach\n- #measure split gap 9,5cm\n',
  'log/2026-02-25.md':
    '- [ ] #session skill 19:00 where:studio\n- #session hoop moved:2026-02-27\n- #pain wrist 2/10\n',
  'log/2026-02-27.md': '# Naïve déjà vu 🤸\r\n\r\n- #sore hamstrings 3/10\r\n- #win both hands off\r\n',
};

function written(notes: Readonly<Record<string, string>>, modified = hour): TimedFolder {
  const folder = new TimedFolder();
  for (const [path, text] of Object.entries(notes)) folder.write(path, text, modified);
  return folder;
}

describe('notes kept for the next session', () => {
  it('answer everything that reading them would, and none of them is read', async () => {
    const folder = written(journal);
    const collection = await next(folder, await keep(folder, 2 * hour));
    assert.deepEqual(collection.counts, { read: 0, parsed: 0 });
    assert.equal(collection.takenFromKept, 5);
    assert.deepEqual(collection.journals().map(allOf), expectedJournals(folder.texts(), new Map()));
  });

  it('are taken only for files of the same size and time', async () => {
    const folder = written(journal);
    const bytes = await keep(folder, 2 * hour);
    folder.write('goals.md', journal['goals.md'].replace('split', 'pike!'), 3 * hour);
    folder.write('2026-02-24.md', '- #rest\n', hour);
    folder.files.delete('log/2026-02-27.md');
    folder.write('log/2026-02-28.md', '- #session skill\n', hour);
    const collection = await next(folder, bytes);
    assert.equal(collection.counts.read, 3);
    assert.equal(collection.takenFromKept, 2);
    assert.deepEqual(collection.journals().map(allOf), expectedJournals(folder.texts(), new Map()));
  });

  it('leave out files that had not rested for three seconds when the folder was listed', async () => {
    const folder = written(journal);
    folder.write('log/2026-02-28.md', '- #session skill\n', 2 * hour - 2999);
    folder.write('log/2026-03-01.md', '- #session skill\n', 2 * hour - 3000);
    assert.equal((await decodeKeptNotes(await keep(folder, 2 * hour), from))?.size, 6);
  });

  it('leave out texts that are not the whole file', async () => {
    const folder = written(journal);
    const collection = new JournalCollection({
      list: () => folder.list(),
      read: async (path) => (await folder.read(path))?.slice(path === 'goals.md' ? 9 : 0),
      onChange: () => folder.onChange(),
    });
    await collection.load();
    const kept = await decodeKeptNotes(await encodeKeptNotes(collection.readFiles(), from, 2 * hour), from);
    assert.equal(kept?.size, 4);
  });

  it('are not taken by another version of the reader, or for another folder', async () => {
    const bytes = await keep(written(journal), 2 * hour);
    assert.equal(await decodeKeptNotes(bytes, { ...from, reader: 'two' }), undefined);
    assert.equal(await decodeKeptNotes(bytes, { ...from, folder: 'file:///other' }), undefined);
    assert.equal((await decodeKeptNotes(bytes, from))?.size, 5);
  });

  it('are not taken when a single byte is other than it was written, is missing, or is one too many', async () => {
    const bytes = await keep(written(journal), 2 * hour);
    for (let index = 0; index < bytes.length; index += 1) {
      const damaged = bytes.slice();
      damaged[index] = (damaged[index] as number) ^ (1 << (index % 8));
      assert.equal(await decodeKeptNotes(damaged, from), undefined, `byte ${index}`);
      assert.equal(await decodeKeptNotes(bytes.subarray(0, index), from), undefined, `${index} bytes`);
    }
    assert.equal(await decodeKeptNotes(new Uint8Array([...bytes, 0]), from), undefined);
    assert.equal(await decodeKeptNotes(new TextEncoder().encode('{"reader":"one"}'), from), undefined);
  });

  it('can be kept again without having been read', async () => {
    const folder = written(journal);
    const bytes = await keep(folder, 2 * hour);
    const collection = await next(folder, bytes);
    assert.deepEqual(await encodeKeptNotes(collection.readFiles(), from, 2 * hour), bytes);
  });

  it('are read all the same when all is to be read again', async () => {
    const folder = written(journal);
    const collection = await next(folder, await keep(folder, 2 * hour));
    folder.files.set('2026-02-24.md', {
      text: journal['2026-02-24.md'].replace('9,5', '8,0'),
      modified: hour,
    });
    await collection.load();
    assert.equal(collection.counts.read, 0);
    await collection.load({ again: true });
    assert.equal(collection.counts.read, 5);
    assert.deepEqual(collection.journals().map(allOf), expectedJournals(folder.texts(), new Map()));
  });
});

const paths = [
  ...Object.keys(journal),
  '2026-02-26.md',
  'heron/journal.md',
  'heron/2026-02-25.md',
  'busy.ics',
];
const texts = [
  ...Object.values(journal),
  '',
  '- #session skill 18:30\n',
  '- #session hoop 18:30\n',
  'Wörter\n',
];
const change = fc.oneof(
  fc.record({
    do: fc.constant('write' as const),
    path: fc.constantFrom(...paths),
    text: fc.constantFrom(...texts),
    hours: fc.integer({ min: 2, max: 4 }),
  }),
  fc.record({ do: fc.constant('remove' as const), path: fc.constantFrom(...paths) }),
  fc.record({
    do: fc.constant('open' as const),
    path: fc.constantFrom(...paths),
    text: fc.constantFrom(...texts),
  }),
);
const damage = fc.oneof(
  { weight: 2, arbitrary: fc.constant({ do: 'nothing' as const }) },
  fc.record({ do: fc.constant('flip' as const), at: fc.nat(), bit: fc.nat({ max: 7 }) }),
  fc.record({ do: fc.constant('cut' as const), at: fc.nat() }),
  fc.record({ do: fc.constant('other reader' as const) }),
);

describe('a session after any changes and damage', function () {
  this.timeout(120_000);
  it('holds what a fresh one would read, open documents before the disk', async () => {
    let kept = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.dictionary(fc.constantFrom(...paths), fc.constantFrom(...texts)),
        fc.array(change, { maxLength: 6 }),
        damage,
        async (notes, changes, damage) => {
          const folder = written(notes);
          const reader = damage.do === 'other reader' ? 'two' : from.reader;
          let bytes = await keep(folder, 2 * hour, { ...from, reader });
          if (damage.do === 'cut') bytes = bytes.subarray(0, damage.at % (bytes.length + 1));
          if (damage.do === 'flip') {
            const at = damage.at % bytes.length;
            bytes[at] = (bytes[at] as number) ^ (1 << damage.bit);
          }
          const open = new Map<string, string>();
          for (const one of changes) {
            if (one.do === 'write') folder.write(one.path, one.text, one.hours * hour);
            else if (one.do === 'remove') folder.files.delete(one.path);
            else if (one.path.endsWith('.md')) open.set(one.path, one.text);
          }
          const collection = await next(folder, bytes, open);
          assert.deepEqual(collection.journals().map(allOf), expectedJournals(folder.texts(), open));
          kept += collection.takenFromKept;
        },
      ),
      { seed: 2026, numRuns: 3000 },
    );
    assert.ok(kept > 1000, `${kept} kept notes were taken`);
  });
});
