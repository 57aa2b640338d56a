import assert from 'node:assert/strict';
import { goalPageData, type JournalOfPage } from '../../src/editor/goal-page/page-data';
import { readPageMessage, readPageState } from '../../src/editor/goal-page/page-messages';
import { readingsAsMarkdown } from '../../src/editor/goal-page/readings-table';
import { newNonce, pageHtml } from '../../src/editor/page/page-html';
import { wordsOf } from '../../src/editor/words';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { dayNumber, type IsoDate, isoDate } from '../../src/notation/time/iso-date';
import type { GoalPageData, GoalView } from '../../src/pages/goal-page-data';
import { fillMessage } from '../../src/training/finding';
import { goalProgress } from '../../src/training/goal-progress';

const today = '2026-02-26' as IsoDate;
const words = wordsOf('en', fillMessage);

function opened(notes: Readonly<Record<string, string>>): JournalOfPage {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
  return { id: 'file:///wren', title: 'Wren', journal, today: () => today };
}

function page(notes: Readonly<Record<string, string>>, chosen = ''): GoalPageData {
  return goalPageData(opened(notes), chosen, words, 'en');
}

function only(notes: Readonly<Record<string, string>>): GoalView {
  const [goal, ...others] = page(notes).goals;
  assert.ok(goal && others.length === 0);
  return goal;
}

const split = '- #goal split by:2026-06-14 from:2026-01-05 "Front split"\n- #metric gap from:14cm to:0cm\n';

describe('what the goal page shows', () => {
  it('is one goal when it is chosen, and otherwise all, the nearest first and closed ones last', () => {
    const notes = {
      'goals.md': `${split}- #goal handstand by:2026-05-01\n- [x] #goal bridge by:2026-03-01\n- #goal dreams\n`,
    };
    assert.deepEqual(
      page(notes).goals.map((goal) => goal.id),
      ['handstand', 'split', 'dreams', 'bridge'],
    );
    assert.deepEqual(
      page(notes).choices.map((choice) => choice.label),
      ['All goals', 'handstand', 'Front split', 'dreams', 'bridge'],
    );
    assert.deepEqual(
      page(notes, 'split').goals.map((goal) => goal.id),
      ['split'],
    );
    // A goal that is gone, in a page that was kept.
    assert.equal(page(notes, 'rope').chosen, '');
    assert.equal(page(notes, 'rope').goals.length, 4);
  });

  /** Every `step` days a reading, so many tenths of a centimetre lower each time. */
  const falling = (count: number, step: number, tenths: (index: number) => number) => {
    const first = dayNumber('2025-12-01' as IsoDate);
    return Object.fromEntries(
      Array.from({ length: count }, (_, index) => [
        `${isoDate(first + step * index)}.md`,
        `- #measure split gap ${((140 - tenths(index)) / 10).toFixed(1)}cm\n`,
      ]),
    );
  };
  const paceOf = (notes: Readonly<Record<string, string>>): string | undefined =>
    only(notes).metrics[0]?.sentences.find((sentence) => sentence.startsWith('The date asks'));
  const goal = (by: string, to: string) => ({
    'goals.md': `- #goal split by:${by}\n- #metric gap from:14cm to:${to}\n`,
  });

  it('says why a pace beyond the readings need not miss the date, so that its two sentences agree', () => {
    // A day between the range's early end and the pace's own: the line may be further along than drawn.
    const uneven = falling(12, 7, (index) => 4 * index + ([0, 3, -3, 2, -2, 0][index % 6] ?? 0));
    const verdict = only({ ...goal('2026-04-20', '6cm'), ...uneven }).metrics[0]?.verdicts[0] ?? '';
    assert.match(verdict, /lies between the two/);
    assert.match(
      paceOf({ ...goal('2026-04-20', '6cm'), ...uneven }) ?? '',
      /\(95 %\)\. That is faster than they show: the date is met only if the line is further along/,
    );
    // With time to spare there is nothing to explain, and past the whole range nothing to reconcile.
    for (const by of ['2026-09-30', '2026-03-10']) {
      assert.match(paceOf({ ...goal(by, '6cm'), ...uneven }) ?? '', /\(95 %\)\.$/);
    }
  });

  it('asks for no pace once the target was reached', () => {
    const notes = {
      ...goal('2026-06-14', '9cm'),
      ...falling(12, 7, (index) => (index === 9 ? 52 : 3 * index)),
    };
    const metric = only(notes).metrics[0];
    assert.match(metric?.verdicts[0] ?? '', /^The target was reached on February 2\./);
    assert.equal(paceOf(notes), undefined);
    const row = metric?.figures?.rows.find(({ name }) => name === 'Change a week that the date asks for');
    assert.deepEqual(row?.cells, ['the target is reached']);
  });

  it('never holds the words of a reason', () => {
    const notes = { 'goals.md': `${split}#why my own quiet reason\n` };
    assert.equal(only(notes).hasWhy, true);
    assert.equal(JSON.stringify(page(notes)).includes('quiet'), false);
  });

  it('says how many days are left, or passed', () => {
    const sentence = (by: string): string | undefined =>
      only({ 'goals.md': `- #goal split ${by}\n` }).sentences[0];
    assert.equal(sentence('by:2026-06-14'), 'By Sunday, June 14: 108 days are left.');
    assert.equal(sentence('by:2026-02-27'), 'By Friday, February 27: 1 day is left.');
    assert.equal(sentence('by:2026-02-26'), 'Its date is today, Thursday, February 26.');
    assert.equal(sentence('by:2026-02-25'), 'Its date was yesterday, Wednesday, February 25.');
    assert.equal(sentence('by:2026-02-20'), 'Its date was Friday, February 20, 6 days ago.');
    assert.equal(sentence(''), 'It has no date yet.');
  });

  it('says what is left of the way, whichever direction is better', () => {
    const sentences = (metric: string, reading: string): readonly string[] | undefined =>
      only({
        'goals.md': `- #goal split\n- #metric gap ${metric}\n`,
        '2026-02-24.md': `#measure split gap ${reading}\n`,
      }).metrics[0]?.sentences.filter((sentence) => sentence.startsWith('Latest'));
    assert.deepEqual(sentences('from:14cm to:4cm', '9.5cm'), [
      'Latest: 9.5 cm on Tuesday, February 24; 5.5 cm to go.',
    ]);
    assert.deepEqual(sentences('from:8s to:30s', '20s'), [
      'Latest: 20 s on Tuesday, February 24; 10 s to go.',
    ]);
    assert.deepEqual(sentences('from:14cm to:4cm', '3cm'), [
      'Latest: 3 cm on Tuesday, February 24; the target is reached.',
    ]);
    assert.deepEqual(sentences('', '3cm'), ['Latest: 3 cm on Tuesday, February 24.']);
  });

  it('has a point for the mean of a day, and beside it the readings that it stands for', () => {
    const chart = only({
      'goals.md': split,
      '2026-02-10.md': '#measure split gap 12cm\n',
      '2026-02-24.md': '#measure split gap 9cm\n#measure split gap 100mm\n',
    }).metrics[0]?.chart;
    const series = chart?.series[0];
    assert.deepEqual(
      series?.days.map(({ day, value, text }) => [
        day - dayNumber(today),
        value,
        text.replace(/\u00a0/g, ' '),
      ]),
      [
        [-16, 12, 'Readings: 12 cm, Tuesday, February 10'],
        [-2, 9.5, 'Readings: 9.5 cm, Tuesday, February 24, mean of 2'],
      ],
    );
    assert.deepEqual(
      series?.repeats.map(({ value }) => value),
      [9, 10],
    );
    assert.equal(series?.days[1]?.place.note, '2026-02-24.md');
    assert.equal(chart?.target?.at, 0);
    assert.equal(chart?.goalDate?.at, dayNumber('2026-06-14' as IsoDate));
    assert.ok(chart && chart.first < dayNumber('2026-01-05' as IsoDate));
    assert.ok(chart.last > dayNumber('2026-06-14' as IsoDate));
  });

  it('keeps the side, and puts readings of another state beside the line', () => {
    const chart = only({
      'goals.md': '- #goal split\n- #metric gap from:14cm to:0cm sides\n',
      '2026-02-10.md': '#measure split gap 12cm side:left warm\n#measure split gap 13cm side:right warm\n',
      '2026-02-17.md': '#measure split gap 16cm side:left cold\n',
      '2026-02-24.md': '#measure split gap 11cm side:left warm\n',
    }).metrics[0]?.chart;
    assert.deepEqual(
      chart?.series.map(({ side, condition, isMain, days, others }) => [
        side,
        condition,
        isMain,
        days.map(({ value }) => value),
        others.map(({ value }) => value),
      ]),
      [
        ['left', 'warm', true, [12, 11], [16]],
        ['right', 'warm', true, [13], []],
        ['left', 'cold', false, [16], [12, 11]],
      ],
    );
    assert.equal(chart?.series[0]?.othersName, 'measured cold');
  });

  it('has a bar for each week in which a session was done, and its words', () => {
    const goal = only({
      'goals.md': split,
      '2026-02-16.md': '- [x] #session flexibility 75min for:split\n',
      '2026-02-18.md': '- [x] #session flexibility 75min for:split\n',
      '2026-02-23.md': '- [ ] #session flexibility 75min for:split\n#measure split gap 9cm\n',
    });
    assert.deepEqual(goal.metrics[0]?.chart?.weeks, [
      {
        monday: dayNumber('2026-02-16' as IsoDate),
        done: 2,
        text: 'Week of February 16: 2 of 2 sessions done',
        load: 0,
        loadIsLeast: true,
        loadText: 'Week of February 16: load unknown (2 sessions)',
      },
    ]);
    assert.deepEqual(
      goal.sessions?.rows.map(({ cells }) => cells),
      [
        ['February 23', '0', '1', '0 min', '0'],
        ['February 16', '2', '2', '2 h 30 min', 'unknown (2 sessions)'],
      ],
    );
  });

  it('marks steps of the metric that have a date and a value, and lists all of them', () => {
    const goal = only({
      'goals.md': `${split}- [x] #step first by:2026-01-20 metric:gap to:12cm
- [ ] #step half by:2026-04-12 metric:gap to:7cm
- [ ] #step lesson by:2026-02-01
- [ ] #step someday
`,
      '2026-02-24.md': '#measure split gap 9cm\n',
    });
    assert.deepEqual(
      goal.metrics[0]?.chart?.steps.map(({ value, isDone }) => [value, isDone]),
      [
        [12, true],
        [7, false],
      ],
    );
    assert.deepEqual(
      goal.steps.map(({ name, state, text }) => [name, state, text.replace(/\u00a0/g, ' ')]),
      [
        ['first', 'done', 'gap 12 cm, done'],
        ['half', 'open', 'gap 7 cm, open, by April 12'],
        ['lesson', 'overdue', 'overdue, was due by February 1'],
        ['someday', 'open', 'open'],
      ],
    );
  });

  it('says why there is nothing to draw', () => {
    const notice = (notes: Readonly<Record<string, string>>) => only(notes).metrics[0]?.notice;
    assert.equal(
      notice({ 'goals.md': split }),
      'No readings yet. Write one in the note of a day: #measure split gap 14cm',
    );
    assert.match(
      notice({ 'goals.md': split, '2026-02-24.md': '#measure split gap 9cm\n' }) ?? '',
      /^Not enough readings yet/,
    );
    assert.match(
      notice({ 'goals.md': split, '2026-02-24.md': '#measure split gap 9kg\n' }) ?? '',
      /^No reading can be used/,
    );
    assert.match(only({ 'goals.md': '- #goal split\n' }).notices[0] ?? '', /^Nothing to measure yet/);
    assert.match(page({}).notice ?? '', /^There is no goal in this journal yet/);
  });
});

describe('the readings as a Markdown table', () => {
  it('stand in order, in the words of the notes, with only the columns that are used', () => {
    const open = opened({
      'goals.md': '- #goal split\n- #metric gap from:14cm to:0cm\n- #metric entries from:1/5 to:4/5\n',
      '2026-02-24.md': '#measure split gap 9.5cm side:left cold\n#measure split entries 3/5\n',
      '2026-02-17.md': '#measure split gap 110mm side:left\n',
    });
    const progress = goalProgress(open.journal, 'split', { today });
    assert.ok(progress);
    assert.equal(
      readingsAsMarkdown(progress, { words, today }),
      `| Day | Metric | Value | Side | Measured |
| --- | --- | --- | --- | --- |
| 2026-02-17 | gap | 110mm | left |  |
| 2026-02-24 | gap | 9.5cm | left | cold |
| 2026-02-24 | entries | 3/5 |  |  |
`,
    );
  });

  it('are none without readings', () => {
    const open = opened({ 'goals.md': split });
    const progress = goalProgress(open.journal, 'split', { today });
    assert.ok(progress);
    assert.equal(readingsAsMarkdown(progress, { words, today }), undefined);
  });
});

describe('what a page may ask for', () => {
  it('is read when it is one of a few things', () => {
    const place = { note: 'goals.md', range: { start: 0, end: 3 } };
    assert.deepEqual(readPageMessage({ type: 'open', place }), { type: 'open', place });
    assert.deepEqual(readPageMessage({ type: 'choose', goal: '', more: 1 }), { type: 'choose', goal: '' });
    for (const other of [
      undefined,
      null,
      'ready',
      { type: 'run' },
      { type: 'why' },
      { type: 'open', place: { note: 'x' } },
      { type: 'open', place: { note: 'x', range: { start: 0.5, end: 2 } } },
    ]) {
      assert.equal(readPageMessage(other), undefined);
    }
  });

  it('and what it kept is a journal and a goal', () => {
    assert.deepEqual(readPageState({ journal: 'file:///wren', goal: 'split', scroll: 4 }), {
      journal: 'file:///wren',
      goal: 'split',
    });
    assert.deepEqual(readPageState({ journal: 'file:///wren' }), { journal: 'file:///wren', goal: '' });
    for (const other of [undefined, null, {}, { journal: 3 }]) assert.equal(readPageState(other), undefined);
  });
});

describe('the frame of a page', () => {
  const frame = {
    script: 'https://files.example/page.js?a&b',
    style: 'https://files.example/page.css',
    styleSource: 'https://files.example',
    nonce: 'abc',
    language: 'en',
    title: 'A <b> & "c"',
  };

  it('lets nothing in but its own script and style sheet', () => {
    const html = pageHtml(frame);
    assert.ok(
      html.includes(`content="default-src 'none'; style-src https://files.example; script-src 'nonce-abc'"`),
    );
    assert.equal(html.includes('unsafe'), false);
    assert.equal(html.includes('style="'), false);
    assert.ok(html.includes('<title>A &lt;b> &amp; &quot;c&quot;</title>'));
  });

  it('has a word that is new each time', () => {
    assert.match(newNonce(), /^[0-9a-f]{32}$/);
    assert.notEqual(newNonce(), newNonce());
  });
});
