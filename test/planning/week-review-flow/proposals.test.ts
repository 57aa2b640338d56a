import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { fillMessage } from '../../../src/training/finding';
import type { Notes } from '../journal-of';
import { flowOf, proposalsOf } from './in-review';

/** Rules that every journal begins with, out of the way. */
const quiet = '- #rule recovery min:0/week\n- #rule rest-day min:0/week\n';

const daysFrom = (first: string, count: number, step = 1): readonly string[] =>
  Array.from({ length: count }, (_, index) =>
    new Date(Date.parse(`${first}T00:00Z`) + step * index * 86_400_000).toISOString().slice(0, 10),
  );

const onEach = (days: readonly string[], text: string): Notes =>
  Object.fromEntries(days.map((day) => [`${day}.md`, text]));

describe('what a review proposes', () => {
  it('is nothing in a week in which all went well', () => {
    assert.deepEqual(
      proposalsOf({
        'rules.md': quiet,
        '2026-02-23.md': '- [x] #session flexibility 18:00 60min 6/10\n',
        '2026-02-26.md': '- [x] #session flexibility 18:00 60min 6/10\n',
      }),
      [],
    );
  });

  it('moves sessions of the next week apart that stand too close, once a session', () => {
    const notes = {
      'rules.md': `${quiet}- #rule flexibility gap:48h\n- #free monday tuesday thursday 17:00-21:00\n`,
      '2026-02-23.md': '- [x] #session flexibility 18:00 60min 7/10\n',
      '2026-03-02.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
      '2026-03-03.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
    };
    assert.deepEqual(proposalsOf(notes), [
      "move: flexibility of 2026-03-03: Move it to Thursday, 2026-03-05: the first day that breaks no rule; parts two hard days | 23 h after Monday's flexibility session; the rule asks 48 h",
    ]);
  });

  it('asks nothing about what is past: only the athlete knows what became of an overdue session', () => {
    assert.deepEqual(
      proposalsOf({
        'rules.md': `${quiet}- #rule flexibility gap:48h\n`,
        '2026-02-23.md': '- [x] #session flexibility 18:00 60min 7/10\n',
        '2026-02-24.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
      }),
      [],
    );
  });

  it('keeps sessions apart next week after which the body was still sore', () => {
    const notes = {
      'rules.md': quiet,
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 6/10\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10\n- #sore hamstrings 5/10\n',
    };
    assert.deepEqual(proposalsOf(notes), [
      "apart: Keep flexibility sessions 34 h 45 min apart next week, where there is room | Sore on Tuesday, 22 h 45 min after Monday's flexibility session: hamstrings",
    ]);
    const easy = { ...notes, '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10\n' };
    assert.deepEqual(proposalsOf(easy), []);
  });

  it('writes the gap that the notes suggest into the rule, and changes it for nobody who leaves it', () => {
    const days = [
      ...['2026-01-05', '2026-01-06', '2026-01-09', '2026-01-10', '2026-01-13', '2026-01-14', '2026-01-18'],
      ...['2026-01-19', '2026-01-22', '2026-01-23', '2026-01-27', '2026-01-28', '2026-01-31', '2026-02-01'],
    ];
    const sore = [
      '2026-01-06',
      '2026-01-10',
      '2026-01-14',
      '2026-01-19',
      '2026-01-23',
      '2026-01-28',
      '2026-02-01',
    ];
    const session = '- [x] #session flexibility 18:30 60min 7/10 routine:split\n';
    const [only, ...more] = proposalsOf(
      {
        'journal.md': `${quiet}- #routine split flexibility 60min regions:hamstrings\n- #rule flexibility gap:24h\n- #rule hamstrings gap:60h\n`,
        ...onEach(days, session),
        ...onEach(sore, `${session}- #sore hamstrings 5/10\n`),
      },
      { on: '2026-02-08' },
    );
    assert.deepEqual(more, []);
    assert.match(only ?? '', /^gap: Change the gap of flexibility to \d+h \| Still sore in 7 of 13 pairs/);
  });

  const slide: Notes = {
    'rules.md': quiet,
    'goals.md': '- #need skill 5/week 45min 5/10\n',
    ...onEach(daysFrom('2026-01-05', 46), '- [x] #session skill 18:30 45min 5/10\n'),
    ...onEach(daysFrom('2026-02-20', 9), '- [ ] #session skill 18:30 45min 5/10 skipped:tired\n'),
  };

  it('makes the next week smaller while sessions slip', () => {
    const [only, ...more] = proposalsOf(slide);
    assert.deepEqual(more, []);
    assert.match(
      only ?? '',
      /^smaller: A smaller week: 4 training sessions in place of 5 \| Fewer done lately: \d+ of the last \d+ planned/,
    );
  });

  // Common practice, no source.
  it('makes it smaller in the weeks of a block in which many slow down', () => {
    const notes = {
      'rules.md': quiet,
      'goals.md': '- #goal act from:2026-02-09\n- #need skill 3/week 45min 5/10\n',
      ...onEach(daysFrom('2026-02-09', 7, 3), '- [x] #session skill 18:30 45min 5/10 for:act\n'),
    };
    assert.deepEqual(proposalsOf(notes), [
      'smaller: A smaller week: 1 training session in place of 3 | Week 3 of the block: many slow down now (common practice, no source)',
    ]);
  });

  it('comes back in steps after a break, called borrowed, with the cautions', () => {
    const notes = {
      'rules.md': quiet,
      'goals.md': '- #need skill 4/week 60min 8/10\n',
      ...onEach(daysFrom('2026-01-05', 8, 2), '- [x] #session skill 18:30 60min 8/10\n'),
    };
    const [only, ...more] = flowOf(notes).proposals;
    assert.deepEqual(more, []);
    assert.ok(only);
    assert.equal(
      fillMessage(only.title),
      'Come back in steps: 2 training sessions at the most, 50 % less than your fullest week',
    );
    assert.match(fillMessage(only.why), /^\d+ days without a session\. Borrowed: Caterisano/);
    assert.match(
      only.cautions.map(fillMessage).join(' '),
      /not medical advice.*licensed health professional/s,
    );
  });

  it('asks for a reading that would be missing for more than two weeks, unless a note asks for it already', () => {
    const notes = {
      'rules.md': quiet,
      'goals.md':
        '- #goal low-split\n- #metric gap from:14cm to:0cm\n- #metric hold from:10s to:30s\n- [x] #goal old\n- #metric reps to:10reps\n',
      '2026-02-21.md': '- #measure low-split gap 12cm warm\n',
      '2026-02-22.md': '- #measure low-split hold 20s\n',
    };
    // 2026-03-08 is 15 days after the 21st, and 14 after the 22nd.
    assert.deepEqual(proposalsOf(notes), [
      'reading: Measure low-split gap next week | Last measured on 2026-02-21, 8 days ago',
    ]);
    const { '2026-02-21.md': _, ...never } = notes;
    assert.deepEqual(proposalsOf(never), ['reading: Measure low-split gap next week | No reading yet']);
    const asked = { ...notes, '2026-03-03.md': '- [ ] Measure low-split gap, warm\n' };
    assert.deepEqual(proposalsOf(asked), []);
    // A reading that came since the week that is looked back on.
    const since = {
      ...notes,
      '2026-03-03.md': '- #measure low-split gap 12cm warm\n- #measure low-split hold 20s\n',
    };
    assert.deepEqual(proposalsOf(since, { on: '2026-03-04' }), []);
  });

  it('says of pain nothing but to ask somebody licensed, and moves nothing for it', () => {
    const flow = flowOf({
      'rules.md': quiet,
      '2026-02-24.md': '- #pain left-wrist 5/10\n- [x] #session skill 18:30 45min 5/10\n',
    });
    assert.deepEqual(flow.proposals, []);
    assert.match(flow.pain.map(fillMessage).join(' '), /left-wrist.*licensed health professional/);
    assert.doesNotMatch(JSON.stringify([flow.review.lines, flow.review.changes]), /wrist|pain/i);
  });
});
