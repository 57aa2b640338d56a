import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { describe, it } from 'mocha';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { readingsAsMarkdown } from '../../src/editor/goal-page/readings-table';
import { monthSheet, sheetExtras } from '../../src/editor/month-sheet/month-sheet';
import { pageHtml } from '../../src/editor/page/page-html';
import { wordsOf } from '../../src/editor/words';
import { JournalCollection } from '../../src/journal/journal-collection';
import type { NoteSource } from '../../src/journal/note-source';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';
import { readNote } from '../../src/notation/read-note';
import type { IsoMonth } from '../../src/notation/time/iso-month';
import { parseIsoWeek } from '../../src/notation/time/iso-week';
import { journalCalendarId } from '../../src/planning/calendar/event-identity';
import { exportCalendar } from '../../src/planning/calendar/export-calendar';
import { addMeasurement } from '../../src/planning/measurement-change';
import { moveSession } from '../../src/planning/session-changes';
import { type ShareSubject, shareNote, shareParts } from '../../src/planning/share-note';
import { reviewWeek } from '../../src/planning/week-review';
import { checkJournal } from '../../src/training/check-journal';
import { fillMessage } from '../../src/training/finding';
import { goalProgress } from '../../src/training/goal-progress';
import { run } from '../command-line/run';
import { date, journalOf } from '../planning/journal-of';
import { harmlessWord, hostileWords, notesWith } from './hostile-notes';

const today = date('2026-02-25');
const week = parseIsoWeek('2026-W09');
assert.ok(week);
const words = wordsOf('en', fillMessage);

/** Characters that command a terminal, and marks that turn words around. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not get through.
const commands = /[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f]/;
const turned = /[\u202a-\u202e\u2066-\u2069]/;

/** Every tag of a page once, with the names of its attributes. */
function markup(html: string): ReadonlySet<string> {
  const tags = html.matchAll(/<[a-z!/](?:"[^"]*"|[^">])*>/gi);
  return new Set([...tags].map(([tag]) => tag.replace(/="[^"]*"/g, '')));
}

/** What is among `found` and not among what harmless words give. */
function added(found: ReadonlySet<string>, harmless: ReadonlySet<string>): readonly string[] {
  assert.ok(harmless.size > 5);
  return [...found].filter((one) => !harmless.has(one));
}

/** The kinds of everything that a reader of Markdown sees in a text, links with their addresses. */
function partsOf(markdown: string): readonly string[] {
  const parts: string[] = [];
  const walk = (node: object) => {
    if ('type' in node)
      parts.push('url' in node ? `${String(node.type)} ${String(node.url)}` : String(node.type));
    if ('children' in node && Array.isArray(node.children)) node.children.forEach(walk);
  };
  walk(unified().use(remarkParse).use(remarkGfm).parse(markdown));
  return parts;
}

/** An address that is written out leads nowhere else than it says. */
const plain =
  /^(?:root|heading|paragraph|text|list|listItem|table|tableRow|tableCell|thematicBreak|link https?:.*)$/;

/** Asserts that Markdown holds words, lists and tables only. */
function assertPlain(markdown: string): void {
  assert.deepEqual(
    partsOf(markdown).filter((part) => !plain.test(part)),
    [],
    markdown,
  );
}

function sheetOf(text: string): string {
  return monthSheet(
    {
      id: 'file:///x',
      title: text,
      journal: journalOf(notesWith(text)),
      today: () => today,
      zone: () => 'UTC',
    },
    {
      month: '2026-02' as IsoMonth,
      weekStart: 1,
      paper: 'a4',
      extras: new Set(sheetExtras),
      language: 'en',
      words,
    },
  );
}

function calendarOf(text: string): string {
  const journal = journalOf(notesWith(text));
  return exportCalendar(journal, {
    first: date('2026-02-23'),
    last: date('2026-03-01'),
    today,
    zone: 'Europe/Lisbon',
    stamp: 29_500_000,
    journalId: journalCalendarId(journal, text),
  });
}

const subjects: readonly ShareSubject[] = [
  { is: 'week', week },
  { is: 'month', month: '2026-02' },
  { is: 'goal', goal: 'split' },
];

/** Every property of a calendar once, and what begins and ends. */
function linesOfCalendar(text: string): ReadonlySet<string> {
  const lines = text.replaceAll('\r\n ', '').split('\r\n');
  return new Set(lines.map((line) => (/^(?:BEGIN|END):/.test(line) ? line : (line.split(/[:;]/)[0] ?? ''))));
}

for (const [what, text] of Object.entries(hostileWords)) {
  const name = text.replace(/[\s"]+/g, '');
  describe(`notes with ${what} in every field, name, title and remark`, () => {
    it('are shared as plain words, whole', () => {
      for (const subject of [...subjects, { is: 'partner', partner: name } as const]) {
        const shared = shareNote(journalOf(notesWith(text)), {
          today,
          zone: 'UTC',
          subject,
          parts: shareParts,
        });
        assertPlain(shared.replace(/<!--[^>]*-->/g, ''));
        assert.doesNotMatch(shared, turned);
        assert.deepEqual(readNote(shared).entries, []);
      }
    });

    it('give a printed month with the markup of harmless ones', () => {
      const html = sheetOf(text);
      assert.deepEqual(added(markup(html), markup(sheetOf(harmlessWord))), []);
      assert.doesNotMatch(html, turned);
    });

    it('give the frame of a page with the markup of a harmless one', () => {
      const frame = (title: string) =>
        pageHtml({ script: 's', style: 't', styleSource: 'u', nonce: 'abc', language: 'en', title });
      assert.deepEqual(added(markup(frame(text)), markup(frame(harmlessWord))), []);
    });

    it('give calendars that a calendar program reads, with the lines of harmless ones', () => {
      const calendar = calendarOf(text);
      assert.deepEqual(added(linesOfCalendar(calendar), linesOfCalendar(calendarOf(harmlessWord))), []);
      const events = new ICAL.Component(ICAL.parse(calendar)).getAllSubcomponents('vevent');
      const summaries = events.map((event) => String(event.getFirstPropertyValue('summary')));
      assert.ok(summaries.length >= 3, summaries.join('\n'));
      assert.ok(!summaries.includes('hostile'), summaries.join('\n'));
      assert.doesNotMatch(calendar.replaceAll('\r\n', ''), commands);
      assert.doesNotMatch(calendar, turned);
    });

    it('are copied as a table that shows words, and from which no spreadsheet computes', () => {
      const progress = goalProgress(journalOf(notesWith(text)), 'split', { today });
      const table = (progress && readingsAsMarkdown(progress, { words, today })) ?? '';
      assertPlain(table);
      const count = (kind: string) => partsOf(table).filter((part) => part === kind).length;
      assert.ok(count('tableRow') >= 2);
      assert.equal(count('tableCell'), 3 * count('tableRow'));
      for (const cell of table.split(/(?<!\\)\|/)) assert.doesNotMatch(cell, /^\s*[=+\-@](?!--)/);
      assert.doesNotMatch(table, turned);
    });

    it('are found fault with in sentences that nothing turns around', () => {
      const findings = checkJournal(journalOf(notesWith(text)), { today, zone: 'UTC' });
      assert.ok(findings.length > 3, `${findings.length} findings`);
      for (const { message } of findings) assert.doesNotMatch(fillMessage(message), turned);
    });

    it('give a terminal nothing to obey, and read nothing but the notes', async () => {
      for (const command of ['check', 'progress', 'load', 'recovery', 'adherence', 'plan', 'roster'])
        for (const format of [[], ['--json']]) {
          const { out, error } = await run([command, 'notes', ...format], notesWith(text), {
            files: new Proxy({}, { get: (_, path) => assert.fail(`${command} reads ${String(path)}`) }),
            writeNotes: () => assert.fail(`${command} writes`),
          });
          assert.ok(out.length + error.length > 0);
          assert.doesNotMatch(out + error, commands, command);
          assert.doesNotMatch(out + error, turned, command);
        }
    });

    it('are read without a look at any other file, and written to no other folder', async () => {
      const notes = notesWith(text);
      const memory = new MemoryNoteSource(notes);
      const source: NoteSource = {
        list: () => memory.list(),
        read: (path) => (path in notes ? memory.read(path) : assert.fail(`reads ${path}`)),
        onChange: (listener) => memory.onChange(listener),
      };
      const collection = new JournalCollection(source);
      await collection.load();
      const [journal] = collection.journals();
      assert.ok(journal);
      const sessions = journal.sessions(0, 30_000);
      assert.ok(sessions.length >= 2);
      const changes = [
        ...sessions.flatMap((session) => moveSession(journal, session, { date: date('2026-03-03') })),
        ...addMeasurement(journal, date('2026-03-04'), {
          goal: name,
          quantity: { value: 9, unit: 'cm' },
          photo: text,
        }),
        ...reviewWeek(journal, {
          today,
          zone: 'UTC',
          acceptedChance: 0.3,
          week,
          includePain: true,
          includeWhy: true,
          say: fillMessage,
        }).changes,
      ];
      const written = new Set(changes.map(({ note }) => note));
      const own = [...Object.keys(notes), '2026-03-03.md', '2026-03-04.md', '2026-W09.md'];
      for (const note of written)
        assert.ok(own.includes(note.replace(' day', '')) || own.includes(note), note);
    });
  });
}

describe('the scripts of pages', () => {
  it('make elements out of names, and never out of text', () => {
    const files = readdirSync('src/pages', { recursive: true, encoding: 'utf8' }).filter((one) =>
      one.endsWith('.ts'),
    );
    assert.ok(files.length > 10);
    const makers =
      /innerHTML|outerHTML|insertAdjacentHTML|document\.write|createContextualFragment|DOMParser|srcdoc|\beval\b/;
    for (const file of files)
      assert.doesNotMatch(readFileSync(join('src/pages', file), 'utf8'), makers, file);
  });
});
