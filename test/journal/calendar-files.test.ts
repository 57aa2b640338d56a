import assert from 'node:assert/strict';
import type { Journal } from '../../src/journal/journal';
import { JournalCollection } from '../../src/journal/journal-collection';
import type { JournalUpdate } from '../../src/journal/journal-updates';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';
import { day } from './index-of';

function shift(start: string, end: string): string {
  return `BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART:${start}\r\nDTEND:${end}\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n`;
}

const early = shift('20260302T060000', '20260302T140000');
const late = shift('20260302T140000', '20260302T220000');

/** The hours of 2 March 2026 that the calendars of a journal take. */
function taken(journal: Journal | undefined): readonly string[] {
  const hours = (local: number) => (local - day('2026-03-02') * 1440) / 60;
  return (journal?.plan.calendars ?? []).flatMap(({ path, calendar }) =>
    calendar
      .between(day('2026-03-02'), day('2026-03-02'), 'UTC')
      .spans.map(({ clock }) => `${path} ${hours(clock.start)}-${hours(clock.end)}`),
  );
}

async function loaded(files: Readonly<Record<string, string>>) {
  const source = new MemoryNoteSource(files);
  const collection = new JournalCollection(source);
  const updates: JournalUpdate[] = [];
  collection.onChange((told) => updates.push(...told));
  collection.watch((error) => assert.fail(String(error)));
  await collection.load();
  updates.length = 0;
  return { source, collection, updates, journal: () => collection.journals()[0] };
}

describe('calendar files of a journal', () => {
  it('are those that lie in its folder, at any depth', async () => {
    const { collection } = await loaded({
      'wren/journal.md': '',
      'wren/hours/shifts.ics': early,
      'heron/journal.md': '',
      'heron/Studio.ICS': late,
      'elsewhere.ics': early,
      'wren/.hidden.ics': late,
    });
    assert.deepEqual(
      collection.journals().map((journal) => [journal.root, taken(journal)]),
      [
        ['heron', ['heron/Studio.ICS 14-22']],
        ['wren', ['wren/hours/shifts.ics 6-14']],
      ],
    );
  });

  it('make no journal, whatever they are named', async () => {
    const { collection } = await loaded({ '2026-03-02.ics': early });
    assert.deepEqual(collection.journals(), []);
  });

  it('are followed when they change, come and go; every week may read differently then', async () => {
    const { source, collection, updates, journal } = await loaded({ 'journal.md': '', 'shifts.ics': early });
    const plan = journal()?.plan;
    source.write('shifts.ics', late);
    await collection.settled();
    assert.deepEqual(taken(journal()), ['shifts.ics 14-22']);
    assert.notEqual(journal()?.plan, plan);
    assert.deepEqual(
      updates.map(({ kind, notes, change }) => [kind, [...notes], change.plan]),
      [['changed', ['shifts.ics'], true]],
    );
    source.write('studio.ics', early);
    await collection.settled();
    assert.deepEqual(taken(journal()), ['shifts.ics 14-22', 'studio.ics 6-14']);
    source.remove('shifts.ics');
    await collection.settled();
    assert.deepEqual(taken(journal()), ['studio.ics 6-14']);
  });

  it('count as they stand in an open document before the disk', async () => {
    const { collection, journal } = await loaded({ 'journal.md': '', 'shifts.ics': early });
    collection.setOpenText('shifts.ics', late);
    assert.deepEqual(taken(journal()), ['shifts.ics 14-22']);
    await collection.closeText('shifts.ics');
    assert.deepEqual(taken(journal()), ['shifts.ics 6-14']);
  });

  it('are no notes, but places in them can be told', async () => {
    const { journal } = await loaded({ 'journal.md': '', 'shifts.ics': early });
    assert.equal(journal()?.note('shifts.ics'), undefined);
    assert.equal(journal()?.file('shifts.ics')?.text, early);
    assert.equal(journal()?.file('journal.md')?.text, '');
    assert.deepEqual(
      [...(journal()?.notes() ?? [])].map(({ path }) => path),
      ['journal.md'],
    );
  });

  it('go with the journal when its folder stops being one', async () => {
    const { source, collection } = await loaded({
      'journal.md': '',
      'wren/journal.md': '',
      'wren/shifts.ics': early,
    });
    source.remove('wren/journal.md');
    await collection.settled();
    assert.deepEqual(
      collection.journals().map((journal) => [journal.root, taken(journal)]),
      [['', ['wren/shifts.ics 6-14']]],
    );
  });
});
