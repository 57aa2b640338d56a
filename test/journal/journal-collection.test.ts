import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { JournalCollection } from '../../src/journal/journal-collection';
import type { JournalUpdate } from '../../src/journal/journal-updates';
import type { NoteFile, NoteSource, SourceChange } from '../../src/journal/note-source';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';
import { days, sessionsOf } from './index-of';

/** A collection that has read these notes, and what it tells from then on. */
async function loaded(notes: Readonly<Record<string, string>>) {
  const source = new MemoryNoteSource(notes);
  const collection = new JournalCollection(source);
  await collection.load();
  const told: string[] = [];
  collection.onChange((updates) => told.push(...updates.map(inShort)));
  return { source, collection, told };
}

function inShort({ kind, journal, notes, change }: JournalUpdate): string {
  const plan = change.plan ? ' plan' : '';
  return `${kind} "${journal.root}" ${[...notes].sort().join(', ')}${plan}`;
}

function roots(collection: JournalCollection): string[] {
  return collection.journals().map(({ root }) => root);
}

function pathsOf(collection: JournalCollection): Record<string, string[]> {
  return Object.fromEntries(
    collection.journals().map((journal) => [journal.root, [...journal.notes()].map(({ path }) => path)]),
  );
}

const skill = '- [ ] #session skill\n';
const strength = '- [ ] #session strength\n';

describe('a collection of journals', () => {
  it('has each note in the deepest journal around it', async () => {
    const { collection } = await loaded({
      'journal.md': '',
      'goals.md': '',
      'roster/2026-02-24.md': skill,
      'roster/heron/journal.md': '#athlete "Heron"\n',
      'roster/heron/log/2026-02-24.md': strength,
    });
    assert.deepEqual(pathsOf(collection), {
      '': ['goals.md', 'journal.md', 'roster/2026-02-24.md'],
      'roster/heron': ['roster/heron/journal.md', 'roster/heron/log/2026-02-24.md'],
    });
    assert.equal(collection.journalOf('roster/heron/new.md')?.plan.athlete?.name, 'Heron');
    assert.equal(collection.journalOf('roster/swift/new.md')?.root, '');
  });

  it('reads no note outside of a journal', async () => {
    const { collection } = await loaded({ 'README.md': '', 'docs/guide.md': '', 'a/journal.md': '' });
    assert.deepEqual(collection.counts, { read: 1, parsed: 1 });
    assert.deepEqual(pathsOf(collection), { a: ['a/journal.md'] });
    assert.equal(collection.journalOf('README.md'), undefined);
  });

  it('is empty where there is no journal', async () => {
    const { collection } = await loaded({ 'README.md': skill });
    assert.deepEqual(collection.journals(), []);
    assert.deepEqual(collection.counts, { read: 0, parsed: 0 });
  });

  it('reads every note once, those that are wanted first before the others', async () => {
    const source = new MemoryNoteSource(
      Object.fromEntries(
        Array.from({ length: 100 }, (_, index) => [`2025-${String(index).padStart(3, '0')}.md`, '']),
      ),
    );
    source.write('journal.md', '');
    source.write('2026-02-24.md', skill);
    const asked: string[] = [];
    const read = source.read.bind(source);
    source.read = (path) => {
      asked.push(path);
      return read(path);
    };
    const collection = new JournalCollection(source);
    const progress: (readonly [number, number])[] = [];
    let askedFirst: readonly string[] = [];
    const isComplete = await collection.load({
      first: (path) => path === '2026-02-24.md' || path === 'journal.md',
      onFirstRead: () => {
        askedFirst = [...asked];
      },
      onProgress: (done, total) => progress.push([done, total]),
    });
    assert.equal(isComplete, true);
    assert.deepEqual([...askedFirst].sort(), ['2026-02-24.md', 'journal.md']);
    assert.deepEqual(collection.counts, { read: 102, parsed: 102 });
    assert.deepEqual(progress.at(-1), [102, 102]);
  });

  it('stops when asked to, and goes on with the next call', async () => {
    const notes = Object.fromEntries(Array.from({ length: 60 }, (_, index) => [`note ${index}.md`, '']));
    const source = new MemoryNoteSource({ ...notes, 'journal.md': '' });
    const collection = new JournalCollection(source);
    assert.equal(await collection.load({ shouldStop: () => true }), false);
    assert.equal(collection.counts.read, 0);
    assert.equal(await collection.load({ shouldStop: () => collection.counts.read >= 20 }), false);
    assert(collection.counts.read >= 20 && collection.counts.read < 61);
    assert.equal(await collection.load(), true);
    assert.deepEqual(collection.counts, { read: 61, parsed: 61 });
    assert.equal(await collection.load(), true);
    assert.equal(collection.counts.read, 61);
  });

  it('finds on the next load what nobody told of', async () => {
    const { source, collection, told } = await loaded({
      'journal.md': '',
      '2026-02-24.md': skill,
      '2026-02-25.md': skill,
      '2026-02-26.md': skill,
    });
    source.write('2026-02-24.md', strength);
    source.write('2026-02-27.md', skill);
    source.remove('2026-02-25.md');
    const { read } = collection.counts;
    await collection.load();
    assert.equal(collection.counts.read, read + 2);
    const [journal] = collection.journals();
    assert(journal);
    assert.deepEqual(sessionsOf(journal, '2026-02-24', '2026-02-28'), [
      '2026-02-24 strength',
      '2026-02-26 skill',
      '2026-02-27 skill',
    ]);
    // A slow machine tells of what it read in more slices; what is told, and in which order, is the same.
    assert.equal(
      told.map((one) => one.replace('changed "" ', '')).join(', '),
      '2026-02-25.md, 2026-02-24.md, 2026-02-27.md',
    );
  });
});

describe('a change on the disk', () => {
  it('costs the reading of one note', async () => {
    const { collection, told } = await loaded({
      'journal.md': '',
      'goals.md': '#goal split\n',
      '2026-02-24.md': skill,
      '2026-02-25.md': skill,
    });
    const before = collection.counts;
    const changes: JournalUpdate[] = [];
    collection.onChange((updates) => changes.push(...updates));
    collection.update('2026-02-24.md', strength);
    assert.deepEqual(collection.counts, { read: before.read, parsed: before.parsed + 1 });
    assert.deepEqual(changes[0]?.change, { days: days('2026-02-24'), plan: false });
    collection.update('2026-02-24.md', strength);
    collection.update('goals.md', undefined);
    collection.update('goals.md', undefined);
    assert.deepEqual(told, ['changed "" 2026-02-24.md', 'changed "" goals.md plan']);
  });

  it('is followed while watched', async () => {
    const { source, collection } = await loaded({ 'journal.md': '', 'log/a/2026-02-24.md': skill });
    const errors: unknown[] = [];
    const watch = collection.watch((error) => errors.push(error));
    source.write('2026-02-25.md', skill);
    source.write('log/b/2026-02-26.md', skill);
    source.write('notes.txt', skill);
    source.remove('log/a');
    await collection.settled();
    assert.deepEqual(pathsOf(collection), { '': ['2026-02-25.md', 'journal.md', 'log/b/2026-02-26.md'] });
    watch.dispose();
    source.write('2026-02-27.md', skill);
    await collection.settled();
    assert.equal(pathsOf(collection)['']?.length, 3);
    assert.deepEqual(errors, []);
  });

  it('may be of a folder that came with notes in it', async () => {
    const { source, collection } = await loaded({ 'journal.md': '' });
    source.write('moved here/2026-02-24.md', skill);
    await collection.apply({ kind: 'changed', path: 'moved here' });
    assert.deepEqual(pathsOf(collection), { '': ['journal.md', 'moved here/2026-02-24.md'] });
  });

  it('leaves nothing of a renamed note or a folder that went', async () => {
    const { collection } = await loaded({
      'journal.md': '',
      'log/2026-02-24.md': skill,
      'logs/2026-02-25.md': skill,
    });
    collection.removeBelow('log');
    collection.update('logs/2026-02-25.md', undefined);
    collection.update('logs/2026-02-26.md', skill);
    assert.deepEqual(pathsOf(collection), { '': ['journal.md', 'logs/2026-02-26.md'] });
    const [journal] = collection.journals();
    assert(journal);
    assert.deepEqual(sessionsOf(journal, '2026-02-20', '2026-02-28'), ['2026-02-26 skill']);
  });

  it('tells which errors a source has when it is listed again', async () => {
    const { source, collection } = await loaded({ 'journal.md': '' });
    const errors: unknown[] = [];
    collection.watch((error) => errors.push(error));
    source.list = () => Promise.reject(new Error('unplugged'));
    source.write('some folder', '');
    await collection.settled();
    await new Promise((resolve) => setTimeout(resolve, 0));
    assert.deepEqual(errors.map(String), ['Error: unplugged']);
    assert.deepEqual(pathsOf(collection), { '': ['journal.md'] });
  });
});

describe('a journal note', () => {
  it('that appears takes over the notes of its folder, read once', async () => {
    const { collection, told } = await loaded({ 'journal.md': '', 'heron/2026-02-24.md': skill });
    const before = collection.counts;
    collection.update('heron/journal.md', '#zone Europe/Lisbon\n');
    assert.deepEqual(pathsOf(collection), {
      '': ['journal.md'],
      heron: ['heron/2026-02-24.md', 'heron/journal.md'],
    });
    assert.deepEqual(collection.counts, { read: before.read, parsed: before.parsed + 1 });
    assert.deepEqual(told.sort(), [
      'added "heron" heron/2026-02-24.md, heron/journal.md plan',
      'changed "" heron/2026-02-24.md',
    ]);
  });

  it('that goes gives them back', async () => {
    const { collection, told } = await loaded({
      'journal.md': '',
      'heron/journal.md': '',
      'heron/2026-02-24.md': skill,
    });
    const before = collection.counts;
    collection.update('heron/journal.md', undefined);
    assert.deepEqual(pathsOf(collection), { '': ['heron/2026-02-24.md', 'journal.md'] });
    assert.deepEqual(collection.counts, before);
    assert.deepEqual(told.sort(), [
      'changed "" heron/2026-02-24.md',
      'removed "heron" heron/2026-02-24.md, heron/journal.md',
    ]);
  });

  it('that is the first one ends the journal without a name, and the last one brings it back', async () => {
    const { collection } = await loaded({ '2026-02-24.md': skill, 'heron/2026-02-25.md': skill });
    assert.deepEqual(roots(collection), ['']);
    collection.update('heron/journal.md', '');
    assert.deepEqual(pathsOf(collection), { heron: ['heron/2026-02-25.md', 'heron/journal.md'] });
    collection.update('heron/journal.md', undefined);
    assert.deepEqual(pathsOf(collection), { '': ['2026-02-24.md', 'heron/2026-02-25.md'] });
    collection.removeBelow('');
    assert.deepEqual(roots(collection), []);
  });

  it('that appears around notes never read has them read', async () => {
    const { collection } = await loaded({ 'docs/guide.md': '#goal split\n' });
    assert.equal(collection.counts.read, 0);
    collection.update('docs/journal.md', '');
    await collection.settled();
    assert.deepEqual(pathsOf(collection), { docs: ['docs/guide.md', 'docs/journal.md'] });
    assert.equal(collection.counts.read, 1);
    assert(collection.journals()[0]?.plan.goals.has('split'));
  });

  it('makes a journal of its folder while it is only an open document', async () => {
    const { collection } = await loaded({ 'heron/goals.md': '#goal split\n' });
    collection.setOpenText('heron/journal.md', '');
    await collection.settled();
    assert.deepEqual(roots(collection), ['heron']);
    await collection.closeText('heron/journal.md');
    assert.deepEqual(roots(collection), []);
  });
});

describe('an open document', () => {
  const sessionsNow = (collection: JournalCollection) =>
    collection.journals().flatMap((journal) => sessionsOf(journal, '2026-02-24'));

  it('wins over the disk until it is closed', async () => {
    const { source, collection, told } = await loaded({ 'journal.md': '', '2026-02-24.md': skill });
    collection.setOpenText('2026-02-24.md', strength);
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 strength']);
    collection.update('2026-02-24.md', '- [ ] #session hoop\n');
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 strength']);
    assert.deepEqual(told, ['changed "" 2026-02-24.md']);
    source.write('2026-02-24.md', '- [ ] #session recovery\n');
    await collection.closeText('2026-02-24.md');
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 recovery']);
  });

  it('that shows what the disk holds costs nothing', async () => {
    const { source, collection, told } = await loaded({ 'journal.md': '', '2026-02-24.md': skill });
    const before = collection.counts;
    collection.setOpenText('2026-02-24.md', skill);
    assert.deepEqual(collection.counts, before);
    collection.setOpenText('2026-02-24.md', strength);
    source.write('2026-02-24.md', strength);
    collection.update('2026-02-24.md', strength);
    assert.deepEqual(collection.counts, { read: before.read, parsed: before.parsed + 1 });
    await collection.closeText('2026-02-24.md');
    assert.equal(collection.counts.parsed, before.parsed + 1);
    assert.deepEqual(told, ['changed "" 2026-02-24.md']);
  });

  it('was open before the folder was read', async () => {
    const collection = new JournalCollection(
      new MemoryNoteSource({ 'journal.md': '', '2026-02-24.md': skill }),
    );
    collection.setOpenText('2026-02-24.md', strength);
    await collection.load();
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 strength']);
    await collection.closeText('2026-02-24.md');
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 skill']);
  });

  it('keeps unsaved text when its file goes, and goes with it when there is none', async () => {
    const { source, collection } = await loaded({
      'journal.md': '',
      '2026-02-24.md': skill,
      '2026-02-24 b.md': strength,
    });
    collection.setOpenText('2026-02-24.md', '- [ ] #session hoop\n');
    collection.setOpenText('2026-02-24 b.md', strength);
    for (const path of ['2026-02-24.md', '2026-02-24 b.md']) {
      source.remove(path);
      collection.update(path, undefined);
    }
    assert.deepEqual(sessionsNow(collection), ['2026-02-24 hoop']);
    await collection.closeText('2026-02-24.md');
    assert.deepEqual(pathsOf(collection), { '': ['journal.md'] });
  });

  it('that is no note is passed over', async () => {
    const { collection } = await loaded({ 'journal.md': '' });
    collection.setOpenText('.trash/2026-02-24.md', skill);
    collection.setOpenText('2026-02-24.txt', skill);
    await collection.closeText('2026-02-24.txt');
    assert.deepEqual(pathsOf(collection), { '': ['journal.md'] });
  });
});

describe('a slow source', () => {
  /** A source whose answers wait until they are let go, one by one. */
  class SlowSource implements NoteSource {
    readonly texts = new Map<string, string>();
    readonly waiting: { readonly path: string; readonly answer: () => void }[] = [];
    listed: (() => void) | undefined;

    list(): Promise<readonly NoteFile[]> {
      const files = [...this.texts].map(([path, text]) => ({ path, size: text.length, modified: 0 }));
      return new Promise((resolve) => {
        this.listed = () => resolve(files);
      });
    }

    read(path: string): Promise<string | undefined> {
      const text = this.texts.get(path);
      return new Promise((resolve) => this.waiting.push({ path, answer: () => resolve(text) }));
    }

    onChange(_listener: (change: SourceChange) => void) {
      return { dispose: () => {} };
    }
  }

  /** Long enough for every promise that can be kept. */
  const aMoment = () => new Promise((resolve) => setTimeout(resolve, 1));

  it('does not undo with an old answer what was heard since', async () => {
    const source = new SlowSource();
    source.texts.set('2026-02-24.md', skill);
    const collection = new JournalCollection(source);
    const loading = collection.load();
    source.listed?.();
    await aMoment();
    assert.deepEqual(
      source.waiting.map(({ path }) => path),
      ['2026-02-24.md'],
    );
    collection.update('2026-02-24.md', strength);
    source.waiting[0]?.answer();
    await loading;
    const [journal] = collection.journals();
    assert(journal);
    assert.deepEqual(sessionsOf(journal, '2026-02-24'), ['2026-02-24 strength']);
  });

  it('counts the answer to the last of two questions, in whatever order they come', async () => {
    const source = new SlowSource();
    const collection = new JournalCollection(source);
    source.texts.set('2026-02-24.md', skill);
    const first = collection.apply({ kind: 'changed', path: '2026-02-24.md' });
    await aMoment();
    source.texts.set('2026-02-24.md', strength);
    const second = collection.apply({ kind: 'changed', path: '2026-02-24.md' });
    await aMoment();
    assert.equal(source.waiting.length, 2);
    source.waiting[1]?.answer();
    await aMoment();
    source.waiting[0]?.answer();
    await Promise.all([first, second]);
    const [journal] = collection.journals();
    assert(journal);
    assert.deepEqual(sessionsOf(journal, '2026-02-24'), ['2026-02-24 strength']);
  });

  it('does not bring back what went while it was listed or read', async () => {
    const source = new SlowSource();
    source.texts.set('journal.md', '');
    source.texts.set('log/2026-02-24.md', skill);
    source.texts.set('2026-02-25.md', skill);
    const collection = new JournalCollection(source);
    const loading = collection.load();
    collection.removeBelow('log');
    collection.update('2026-02-26.md', skill);
    source.listed?.();
    await aMoment();
    collection.update('2026-02-25.md', undefined);
    for (const { answer } of source.waiting) answer();
    await loading;
    assert.deepEqual(pathsOf(collection), { '': ['2026-02-26.md', 'journal.md'] });
  });

  it('keeps what was told while it was listed again', async () => {
    const source = new SlowSource();
    source.texts.set('journal.md', '');
    const collection = new JournalCollection(source);
    const loading = collection.load();
    collection.update('2026-02-24.md', skill);
    source.listed?.();
    await aMoment();
    for (const { answer } of source.waiting) answer();
    await loading;
    assert.deepEqual(pathsOf(collection), { '': ['2026-02-24.md', 'journal.md'] });
  });

  it('keeps what went and came back while it was listed again', async () => {
    const source = new SlowSource();
    source.texts.set('journal.md', '');
    source.texts.set('log/2026-02-24.md', skill);
    const collection = new JournalCollection(source);
    const first = collection.load();
    source.listed?.();
    await aMoment();
    for (const { answer } of source.waiting.splice(0)) answer();
    await first;
    // The list is made while the folder is gone, and comes after it is back.
    source.texts.delete('log/2026-02-24.md');
    const second = collection.load();
    collection.removeBelow('log');
    source.texts.set('log/2026-02-24.md', strength);
    const back = collection.apply({ kind: 'changed', path: 'log/2026-02-24.md' });
    await aMoment();
    for (const { answer } of source.waiting.splice(0)) answer();
    source.listed?.();
    await Promise.all([second, back]);
    const [journal] = collection.journals();
    assert(journal);
    assert.deepEqual(sessionsOf(journal, '2026-02-24'), ['2026-02-24 strength']);
  });

  it('passes over a note that it cannot read', async () => {
    const source = new MemoryNoteSource({ 'journal.md': '', '2026-02-24.md': skill, '2026-02-25.md': skill });
    const read = source.read.bind(source);
    source.read = async (path) => {
      if (path === '2026-02-24.md') throw new Error('no permission');
      return read(path);
    };
    const collection = new JournalCollection(source);
    assert.equal(await collection.load(), true);
    assert.deepEqual(pathsOf(collection), { '': ['2026-02-25.md', 'journal.md'] });
  });
});
