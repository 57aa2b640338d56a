import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { finish } from '../../../src/planning/solver/slices';
import { nextWeekSteps, reviewFlowSteps } from '../../../src/planning/week-review-flow';
import { reviewChanges } from '../../../src/planning/week-review-flow/review-draft';
import { fillMessage } from '../../../src/training/finding';
import { date, journalOf, type Notes } from '../journal-of';
import { flowOf, places, planned, sunday, written } from './in-review';

const quiet = '- #rule recovery min:0/week\n- #rule rest-day min:0/week\n';

/** A goal with a reading too long ago, two sessions a week, and evenings from Monday to Friday. */
const notes: Notes = {
  'rules.md': `${quiet}- #free monday tuesday wednesday thursday friday 18:00-20:00\n`,
  'goals.md':
    '- #goal low-split by:2026-06-14\n- #why a secret\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 60min 7/10\n',
  '2026-02-09.md': '- #measure low-split gap 12cm warm\n',
  '2026-02-23.md': '- [x] #session flexibility 18:00 60min 7/10 for:low-split\n',
  '2026-02-24.md': '- [x] #session flexibility 18:00 60min 7/10 for:low-split\n- #sore hamstrings 5/10\n',
};

const hoursBetween = (plan: ReturnType<typeof planned>): number => {
  const [first, second] = plan.plan.placed;
  assert.ok(first && second);
  const minutes = (one: typeof first) => Date.parse(`${one.date}T00:00Z`) / 60_000 + (one.start ?? 0);
  return (minutes(second) - minutes(first) - first.minutes) / 60;
};

describe('the next week, as the taken proposals leave it', () => {
  it('is the planner’s own when nothing is taken, with what is other than last week', () => {
    const found = planned(notes);
    assert.equal(found.plan.weeks.join(), '2026-W10');
    assert.equal(found.plan.placed.length, 2);
    assert.ok(found.plan.differences.length > 0);
  });

  it('counts a rule that was taken: the plan keeps the gap that the notes suggest', () => {
    const session = '- [x] #session flexibility 18:30 60min 7/10 routine:split\n';
    const days = ['01-05', '01-09', '01-13', '01-18', '01-22', '01-27', '01-31'];
    const sore = ['01-06', '01-10', '01-14', '01-19', '01-23', '01-28', '02-01'];
    const taught: Notes = {
      'journal.md': `${quiet}- #routine split flexibility 60min regions:hamstrings\n- #rule flexibility gap:24h\n- #rule hamstrings gap:24h\n- #free monday tuesday 18:00-20:00\n- #need flexibility 2/week 60min 7/10 routine:split\n`,
      ...Object.fromEntries(days.map((day) => [`2026-${day}.md`, session])),
      ...Object.fromEntries(sore.map((day) => [`2026-${day}.md`, `${session}- #sore hamstrings 5/10\n`])),
    };
    // On two evenings in a row, of which only a rule can take one away.
    const on = { on: '2026-02-08' };
    assert.equal(planned(taught, [], on).plan.placed.length, 2);
    const kept = planned(taught, ['gap'], on);
    assert.equal(kept.plan.placed.length, 1);
    assert.match(written(taught, kept)['journal.md'] ?? '', /#rule \w+ gap:(?:36|48|60|72)h/);
    assert.equal(written(taught, planned(taught, [], on))['journal.md'], taught['journal.md']);
  });

  it('counts a wish to keep sessions apart, in that week alone', () => {
    const { '2026-02-24.md': _, ...others } = notes;
    const close: Notes = {
      ...others,
      'rules.md': `${quiet}- #free monday tuesday wednesday friday 18:00-20:00\n`,
      '2026-02-25.md': '- [x] #session flexibility 18:00 60min 7/10 for:low-split\n- #sore hamstrings 5/10\n',
    };
    assert.equal(hoursBetween(planned(close)), 48);
    assert.ok(hoursBetween(planned(close, ['apart'])) >= 47 + 12);
    const after = written(close, planned(close, ['apart']));
    for (const [path, text] of Object.entries(close)) assert.equal(after[path], text);
  });

  it('counts a smaller week, and a return in steps with nothing hard in it', () => {
    const back: Notes = {
      'rules.md': quiet,
      'goals.md': '- #need skill 4/week 60min 8/10\n',
      ...Object.fromEntries(
        ['05', '06', '08', '09', '12', '13', '15', '16'].map((day) => [
          `2026-01-${day}.md`,
          '- [x] #session skill 18:30 60min 8/10\n',
        ]),
      ),
    };
    assert.equal(planned(back).plan.placed.length, 4);
    const steps = planned(back, ['return']);
    assert.equal(steps.plan.placed.length, 2);
    const after = written(back, steps);
    const texts = Object.entries(after).filter(([path]) => path >= '2026-03-02' && path < '2026-03-09.md');
    assert.deepEqual(
      texts
        .flatMap(([, text]) => text.match(/#session .*/g) ?? [])
        .map((line) => / (\d+)\/10/.exec(line)?.[1]),
      ['6', '6'],
    );
    assert.equal(after['goals.md'], back['goals.md']);
  });

  it('keeps to the minutes of a return, too', () => {
    const back: Notes = {
      'rules.md': quiet,
      'goals.md': '- #need skill 4/week 90min 6/10\n',
      ...Object.fromEntries(
        ['05', '06', '08', '09'].map((day) => [
          `2026-01-${day}.md`,
          '- [x] #session skill 18:30 45min 6/10\n',
        ]),
      ),
    };
    // Half of four sessions are two, and half of 180 min are one of 90.
    assert.equal(planned(back, ['return']).plan.placed.length, 1);
  });

  it('counts a session that was moved, and says where it has gone in the end', () => {
    const crowded: Notes = {
      'rules.md': `${quiet}- #rule flexibility gap:48h\n- #rule any cap:1h\n- #free monday tuesday thursday 18:00-20:00\n`,
      'goals.md': '- #need skill 1/week 60min 5/10\n',
      '2026-03-02.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
      '2026-03-03.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
    };
    assert.deepEqual(places(planned(crowded)), ['Thu 18:00 skill']);
    const moved = planned(crowded, ['move']);
    assert.deepEqual(places(moved), ['Tue 18:00 skill']);
    assert.match(fillMessage(moved.reviewed.taken[0]?.title ?? { template: '', values: [] }), /Thursday/);
    const after = written(crowded, moved);
    assert.match(
      after['2026-03-03.md'] ?? '',
      /flexibility.*moved:2026-03-05\n(?:.*\n)*- \[ \] #session skill/,
    );
    assert.match(after['2026-03-05.md'] ?? '', /#session flexibility 18:00/);
  });

  it('leaves a session where it is that an earlier move has mended', () => {
    const row: Notes = {
      'rules.md': `${quiet}- #rule flexibility gap:40h\n- #free monday tuesday wednesday friday sunday 18:00-20:00\n`,
      '2026-03-02.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
      '2026-03-03.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
      '2026-03-04.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
    };
    assert.equal(flowOf(row).proposals.length, 2);
    const found = planned(row, ['move']);
    assert.deepEqual(
      found.reviewed.taken.map(({ title }) => title === undefined),
      [false, true],
    );
    const days = Object.entries(written(row, found))
      .filter(([path, text]) => path > '2026-03-01' && /#session(?!.*moved:)/.test(text))
      .map(([path]) => path);
    assert.deepEqual(days, ['2026-03-02.md', '2026-03-04.md', '2026-03-06.md']);
  });
});

describe('what one confirmation writes', () => {
  it('is the facts, the day notes of the week, and the reminders to measure, one change a note', () => {
    const after = written(notes, planned(notes, ['reading']));
    assert.match(after['2026-W09.md'] ?? '', /^- Kept: 2 of 2 sessions, 120 min$/m);
    const week = ['02', '03', '04', '05', '06', '07', '08'].map((day) => after[`2026-03-${day}.md`] ?? '');
    assert.equal(week.filter((text) => text !== '').length, 7);
    const measured = week.filter((text) => text.includes('- [ ] Measure low-split gap, warm\n'));
    assert.equal(measured.length, 1);
    assert.match(measured[0] ?? '', /#session flexibility/);
    for (const [path, text] of Object.entries(notes)) assert.equal(after[path], text);
  });

  it('adds a reminder to a note that stands there already, and loses no word of it', () => {
    const own =
      '# Monday\n\n- [ ] #session flexibility 18:00 60min 7/10 for:low-split\n  - splits\n\nMy words.';
    const before = { ...notes, '2026-03-02.md': own };
    const after = written(before, planned(before, ['reading']));
    const text = after['2026-03-02.md'] ?? '';
    assert.match(text, /Measure low-split gap/);
    assert.equal(text.replace('\n- [ ] Measure low-split gap, warm', ''), own);
  });

  it('is what is ticked of the week alone; without a session, the rest all the same', () => {
    const found = planned(notes, ['reading']);
    const [first] = found.plan.placed;
    assert.ok(first);
    const one = reviewChanges(found, { sessions: [first], restDays: false });
    assert.deepEqual(one.map(({ note }) => note).sort(), [`${first.date}.md`, '2026-W09.md'].sort());
    const none = reviewChanges(found, { sessions: [], restDays: false });
    assert.deepEqual(none.map(({ note }) => note).sort(), ['2026-03-02.md', '2026-W09.md']);
  });

  it('is nothing the second time', () => {
    const after = written(notes, planned(notes, ['reading']));
    assert.deepEqual(
      flowOf(after).proposals.map(({ subject }) => subject),
      ['apart'],
    );
    const again = planned(after);
    assert.deepEqual(reviewChanges(again, { sessions: again.plan.placed, restDays: true }), []);
  });

  it('holds nothing private', () => {
    const hurting = { ...notes, '2026-02-25.md': '- #pain left-wrist 5/10\n' };
    const found = planned(hurting, ['reading']);
    const text = JSON.stringify(reviewChanges(found, { sessions: found.plan.placed, restDays: true }));
    assert.doesNotMatch(text, /secret|wrist|pain/i);
  });

  it('leaves the journal as it is until it is written, and refuses one that has changed', () => {
    const journal = journalOf(notes);
    const options = { today: date(sunday), zone: 'UTC' };
    const flow = finish(reviewFlowSteps(journal, options));
    finish(nextWeekSteps(journal, flow, new Set(flow.proposals.map(({ id }) => id)), options));
    assert.deepEqual(
      [...journal.notes()].map(({ path, text }) => [path, text]),
      Object.entries(notes).sort(([one], [other]) => (one < other ? -1 : 1)),
    );
    const other = journalOf({ ...notes, '2026-W09.md': 'Words.\n' });
    assert.throws(() => finish(nextWeekSteps(other, flow, new Set(), options)), RangeError);
  });
});
