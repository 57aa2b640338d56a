import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { monthSheet, type SheetExtra } from '../../src/editor/month-sheet/month-sheet';
import { wordsOf } from '../../src/editor/words';
import { openJournalFile } from '../../src/journal/calendar-file';
import { JournalIndex } from '../../src/journal/journal-index';
import type { IsoDate } from '../../src/notation/time/iso-date';
import type { IsoMonth } from '../../src/notation/time/iso-month';
import { fillMessage } from '../../src/training/finding';

type Notes = Readonly<Record<string, string>>;

function sheet(notes: Notes, extras: readonly SheetExtra[] = [], title = 'Wren'): string {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openJournalFile(path, text));
  return monthSheet(
    { id: 'file:///x', title, journal, today: () => '2026-02-25' as IsoDate, zone: () => 'UTC' },
    {
      month: '2026-02' as IsoMonth,
      weekStart: 1,
      paper: 'a4',
      extras: new Set(extras),
      language: 'en',
      words: wordsOf('en', fillMessage),
    },
  );
}

/** What can be read on the sheet. */
const textOf = (html: string): string => html.replace(/^[\s\S]*<body>/, '').replace(/<[^>]*>/g, ' ');

describe('a printed month', () => {
  /** "secret" stands in every tag that takes words, in remarks, bodies, front matter, headings and file names. */
  const notes: Notes = {
    'secret-journal/journal.md':
      '---\ntitle: secret\n---\n# secret\n\n- #athlete "secret"\n- #zone Europe/Lisbon -- secret\n',
    'secret goals.md': [
      '- #goal secret by:2026-06-14 "secret title" -- secret',
      '- #why secret reason',
      '- #metric secret from:14cm to:0cm -- secret',
      '- [ ] #step secret by:2026-04-01 -- secret',
      '- #need flexibility 2/week where:secret with:secret routine:secret -- secret',
      '- #routine secret flexibility 60min regions:secret -- secret',
      '  - secret exercise',
      '- #rule secret gap:48h -- secret',
      '- #kind secret like:skill',
      '- #free monday 18:00-21:00 where:secret with:secret -- secret',
      '- #busy 2026-02-05 -- secret trip',
      '- #event 2026-02-28 "secret show" for:secret -- secret',
      '',
    ].join('\n'),
    '2026-02-23 secret.md': [
      '# secret day',
      '- [x] #session flexibility 18:30 60min 7/10 for:secret with:secret where:secret routine:secret -- secret',
      '  - secret body',
      '- [ ] #session strength 12:00 skipped:secret -- secret',
      '- [ ] #session skill skipped:injured',
      '- #measure secret secret 9cm photo:secret.jpg -- secret',
      '- #sore secret 3/10 -- secret',
      '- #pain secret 5/10 -- secret',
      '- #win secret',
      'secret prose',
      '',
    ].join('\n'),
    'secret.ics': [
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'BEGIN:VEVENT',
      'UID:secret',
      'DTSTAMP:20260101T000000Z',
      'DTSTART;VALUE=DATE:20260212',
      'SUMMARY:secret appointment',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ].join('\r\n'),
  };

  it('has no private word in it: no reason, region, remark, body, name, event or file', () => {
    const html = sheet(notes, [], 'secret');
    assert.doesNotMatch(html, /secret|injur|pain|sore/i);
    // The planted notes are read: what may be told of them is there.
    const text = textOf(html);
    for (const words of [
      '18:30 flexibility, kept',
      '12:00 strength, left out',
      'skill, left out',
      'busy',
      'event',
    ]) {
      assert.ok(text.includes(words), words);
    }
    assert.equal(html.match(/busy/g)?.length, 2, 'the line and the calendar');
  });

  it('names what was asked for by name, and nothing else', () => {
    const with_ = (extra: SheetExtra): string => textOf(sheet(notes, [extra], 'Wren'));
    assert.match(with_('name'), /Wren, February 2026/);
    assert.match(with_('reasons'), /skill, left out: injured/);
    assert.match(with_('events'), /event: secret show/);
    assert.doesNotMatch(with_('events'), /injured|Wren/);
    assert.doesNotMatch(with_('reasons'), /show|Wren/);
    const all = textOf(sheet(notes, ['name', 'reasons', 'events'], 'Wren'));
    assert.equal(all.match(/secret/g)?.length, 3, 'the reason with its session and its week, and the show');
    assert.match(all, /strength, left out: secret/);
    assert.match(all, /it was left out \(secret\)/);
  });

  it('tells a reason from outside from another one only where reasons are asked for', () => {
    const trip: Notes = { '2026-02-23.md': '- [ ] #session skill skipped:travel\n' };
    assert.ok(!sheet(trip).includes('stroke-dasharray'));
    assert.ok(sheet(trip, ['reasons']).includes('stroke-dasharray'));
    assert.match(textOf(sheet(trip, ['reasons'])), /skill, left out: travel/);
  });

  it('has a box for each session to come, and one to fill in on each other day that is free', () => {
    const boxes = (html: string): number => html.replace(/<ul>[\s\S]*/, '').match(/<rect /g)?.length ?? 0;
    // 25 to 28 February.
    assert.equal(boxes(sheet({})), 4);
    assert.equal(
      boxes(
        sheet({
          '2026-02-26.md': '- [ ] #session skill\n- [ ] #session strength\n',
          'plan.md': '- #busy 2026-02-28\n',
        }),
      ),
      2 + 2,
    );
  });

  it('is one file by itself: no script, no address, and marks that shape and words tell', () => {
    const html = sheet(notes);
    assert.doesNotMatch(html, /<script|<link|<img|https?:|url\(|@import| on\w+=/i);
    assert.match(html, /default-src 'none'/);
    assert.match(html, /size: A4 landscape/);
  });

  it('shows what a note writes as text, never as markup', () => {
    const html = sheet(
      { 'a.md': '- #event 2026-02-28 "floor & bars, 3 > 2"\n' },
      ['events', 'name'],
      '<script>alert(1)</script>',
    );
    assert.doesNotMatch(html, /<script|<img/);
    assert.ok(html.includes('&lt;script&gt;alert(1)&lt;/script&gt;, February 2026'));
    assert.ok(html.includes('event: floor &amp; bars, 3 &gt; 2'));
  });
});
