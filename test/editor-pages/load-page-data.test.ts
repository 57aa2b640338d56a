import assert from 'node:assert/strict';
import {
  type JournalOfLoadPage,
  loadPageData,
  readLoadPageState,
} from '../../src/editor/load-page/page-data';
import { wordsOf } from '../../src/editor/words';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { dayNumber, type IsoDate, isoDate } from '../../src/notation/time/iso-date';
import { pilePositions } from '../../src/pages/load-page/gap-chart';
import type { LoadPageData } from '../../src/pages/load-page-data';
import { fillMessage } from '../../src/training/finding';

type Notes = Readonly<Record<string, string>>;

const today = '2026-02-26' as IsoDate;

function opened(notes: Notes): JournalOfLoadPage {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
  return { id: 'file:///wren', title: 'Wren', journal, today: () => today, zone: () => 'UTC' };
}

function page(notes: Notes, chance?: number): LoadPageData {
  return loadPageData(opened(notes), wordsOf('en', fillMessage), 'en', chance);
}

/** Two hard sessions a week, a day apart, and the second of each day sore; three days later it is gone. */
function soreWeeks(): Notes {
  const first = dayNumber('2025-11-03' as IsoDate);
  const notes: Record<string, string> = {
    'journal.md': '- #routine split flexibility 60min regions:hamstrings\n- #rule flexibility gap:24h\n',
  };
  for (let week = 0; week < 16; week += 1) {
    for (const [offset, sore] of [
      [0, false],
      [1, true],
      [4, false],
    ] as const) {
      notes[`${isoDate(first + 7 * week + offset)}.md`] =
        `- [x] #session flexibility 18:30 60min 7/10 routine:split\n${sore ? '- #sore hamstrings 5/10\n' : ''}`;
    }
  }
  return notes;
}

describe('what the page about load and recovery shows', () => {
  const loads: Notes = {
    '2026-01-26.md': '- [x] #session strength 18:30 60min 5/10\n',
    '2026-02-02.md': '- [x] #session strength 18:30 60min 5/10\n',
    '2026-02-09.md': '- [x] #session strength 18:30 60min 5/10\n',
    '2026-02-16.md': '- [x] #session strength 18:30 60min 5/10\n- [x] #session hoop 12:00 60min 6/10\n',
    '2026-02-18.md': '- [x] #session flexibility 18:30 60min\n',
    '2026-02-23.md': '- [x] #session hoop 12:00 30min 8/10\n',
  };

  it('is the load of each week by kind, a total that is a lower bound marked as one', () => {
    const { chart, tables, sentences } = page(loads).load;
    assert.deepEqual(chart?.kinds, ['strength', 'hoop', 'flexibility']);
    assert.deepEqual(
      chart?.weeks.slice(-2).map(({ parts, total, text }) => [parts, total, text]),
      [
        [[300, 360, 0], '660+', 'Week of February 16: load at least 660 (1 session unknown)'],
        [[0, 240, 0], '240', 'Week of February 23: load 240'],
      ],
    );
    assert.deepEqual(
      tables[0]?.rows.slice(0, 3).map(({ cells }) => cells),
      [
        ['February 23', '240', '1', '30 min', 'not over yet', 'not over yet', 'not over yet'],
        [
          'February 16',
          'at least 660 (1 session unknown)',
          '3',
          '3 h',
          'not enough notes yet (6 of 7 days with a known load)',
          'not enough notes yet (6 of 7 days with a known load)',
          'not enough notes yet (3 of 4 weeks with a known load)',
        ],
        // One session in seven days: monotony is the square root of 6 x 1 / (7 x 6).
        ['February 9', '300', '1', '1 h', '0.38', '113', 'not enough notes yet (2 of 3 weeks before)'],
      ],
    );
    assert.ok(sentences.some((one) => one.includes('without a rating or a length in these weeks: 1.')));
  });

  it('never calls a ratio a risk, and has what is published against it', () => {
    const { criticism, sentences } = page(loads).load;
    assert.equal(criticism?.sentences.length, 4);
    assert.match(sentences.at(-1) ?? '', /not enough notes yet \(\d+ of 28 days in a row/);
  });

  it('has the pairs of sessions as points and as evidence, newest first, each leading to its note', () => {
    const [subject] = page(soreWeeks()).recovery.subjects;
    assert.equal(subject?.name, 'flexibility (kind)');
    // 48 sessions make 47 pairs, in 16 of which the second came a day later and was sore.
    assert.equal(subject?.chart?.points.length, 47);
    assert.equal(subject?.chart?.points.filter(({ sore }) => sore).length, 16);
    assert.equal(subject?.evidence?.rows.length, 47);
    assert.deepEqual(subject?.evidence?.rows[1]?.cells, [
      'February 17',
      'flexibility',
      '23 h',
      '420',
      'still sore: hamstrings 5/10',
    ]);
    assert.equal(subject?.evidence?.rows[1]?.place?.note, '2026-02-17.md');
  });

  it('draws the fitted chance only between the gaps that were seen, falling, inside its interval', () => {
    const curve = page(soreWeeks()).recovery.subjects[0]?.chart?.curve ?? [];
    assert.equal(curve[0]?.hours, 23);
    assert.equal(curve.at(-1)?.hours, 71);
    for (const [index, point] of curve.entries()) {
      assert.ok(point.lower <= point.chance && point.chance <= point.upper);
      assert.ok(index === 0 || point.chance < (curve[index - 1]?.chance ?? 0));
    }
  });

  it('asks for a longer gap where a smaller chance is accepted', () => {
    const learned = (chance: number): number =>
      page(soreWeeks(), chance).recovery.subjects[0]?.chart?.learned?.at ?? Number.NaN;
    assert.ok(learned(0.1) > learned(0.3));
    assert.equal(page(soreWeeks(), 0.1).recovery.subjects[0]?.chart?.accepted.label, '10%');
  });

  it('offers the rule to write, and never writes it', () => {
    const [subject] = page(soreWeeks()).recovery.subjects;
    assert.match(
      subject?.suggestion ?? '',
      /^A longer gap may suit you better: \d+ h\..*#rule flexibility gap:/,
    );
  });

  it('says what is missing where there are too few pairs', () => {
    const [subject] = page(loads).recovery.subjects;
    assert.match(subject?.sentences[0] ?? '', /^No gap can be told: not enough notes yet \(3 of 12 pairs/);
    assert.deepEqual(subject?.chart?.curve, []);
  });

  it('has done of planned by week with the interval, excused ones apart', () => {
    const { chart, tables } = page({
      '2026-02-09.md': '- [x] #session hoop\n',
      '2026-02-10.md': '- [ ] #session hoop skipped:ill\n',
      '2026-02-16.md': '- [x] #session hoop\n',
      '2026-02-17.md': '- [x] #session hoop\n',
      '2026-02-18.md': '- [x] #session hoop\n',
      '2026-02-19.md': '- [ ] #session hoop skipped:tired\n',
    }).adherence;
    // Wilson for 3 of 4: .300642 to .954413 (recomputed with a numerical library).
    const week = chart?.weeks[1];
    assert.equal(week?.share, 0.75);
    assert.ok(Math.abs((week?.lower ?? 0) - 0.300642) < 1e-6);
    assert.ok(Math.abs((week?.upper ?? 0) - 0.954413) < 1e-6);
    assert.deepEqual(
      tables[0]?.rows.map(({ cells }) => cells),
      [
        ['February 16', '3 of 4', '75%', '30% to 95%', '0', '0', 'tired 1'],
        ['February 9', '1 of 1', '100%', '21% to 100%', '1', '0', 'ill 1'],
      ],
    );
  });

  it('says how to begin where there is nothing', () => {
    const { load, recovery, adherence } = page({});
    assert.match(load.notice ?? '', /^No session is done yet/);
    assert.match(recovery.notice ?? '', /^Not enough notes yet/);
    assert.match(adherence.notice ?? '', /^Not enough notes yet/);
  });

  it('is found again by its journal', () => {
    assert.deepEqual(readLoadPageState({ journal: 'file:///wren', subject: 'x' }), {
      journal: 'file:///wren',
    });
    for (const other of [undefined, null, {}, { journal: 3 }])
      assert.equal(readLoadPageState(other), undefined);
  });
});

describe('points of one gap', () => {
  it('are piled up, sore ones downwards from the top', () => {
    const point = (hours: number, sore: boolean) => ({
      hours,
      sore,
      text: '',
      place: { note: '', range: { start: 0, end: 0 } },
    });
    assert.deepEqual(pilePositions([point(48, true), point(48, true), point(48, false), point(72, true)]), [
      { x: 48, y: 1 },
      { x: 48, y: 1 - 0.035 },
      { x: 48, y: 0 },
      { x: 72, y: 1 },
    ]);
  });
});
