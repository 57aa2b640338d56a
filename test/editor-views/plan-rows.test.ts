import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  type PlanRow,
  planSections,
  planTitle,
  type ShownPlan,
  sessionName,
} from '../../src/editor/plan-preview/plan-rows';
import { linesOf } from '../../src/editor/plan-preview/words-in-lines';
import { type IsoWeek, parseIsoWeek } from '../../src/notation/time/iso-week';
import { type PlanWeeksOptions, planWeeks } from '../../src/planning/plan-weeks';
import { applied, changed, journalOf } from '../planning/journal-of';
import { block, date, english, type Notes } from './viewed';

function week(text: string): IsoWeek {
  return parseIsoWeek(text) ?? assert.fail(`${text} is a week`);
}

/** Planned on Tuesday, 2026-02-24: the week of 2 to 8 March, or the rest of the running one. */
function shown(notes: Notes, mode: 'new' | 'rearrange' = 'new', more: Partial<ShownPlan> = {}): ShownPlan {
  const journal = journalOf(notes);
  const options: PlanWeeksOptions = {
    today: date('2026-02-24'),
    zone: 'Europe/Berlin',
    weeks: [week(mode === 'new' ? '2026-W10' : '2026-W09')],
    mode,
  };
  const plan = planWeeks(journal, options);
  return { journal, options, plan, unticked: new Set(), withRestDays: true, words: english, ...more };
}

function rowsOf(plan: ShownPlan): readonly PlanRow[] {
  return planSections(plan).flatMap(({ rows }) => rows);
}

function inText(plan: ShownPlan): string {
  const line = ({ icon, label, description, detail, action }: PlanRow) =>
    `  (${icon}) ${[label, description, detail].filter((part) => part).join(' | ')} -> ${action.does}`;
  return planSections(plan)
    .map(({ title, rows }) => [title ?? 'At the top', ...rows.map(line)].join('\n'))
    .join('\n');
}

const noRecovery = '- #rule recovery min:0/week\n';
const fitting: Notes = {
  'goals.md':
    '- #goal low-split by:2026-06-14\n- #need flexibility 2/week 75min 8/10\n- #need strength 1/week 60min 6/10 with:coach\n',
  'hours.md': `${noRecovery}- #free mon thu 18:00-20:30\n- #free wed 19:30-21:30 with:coach\n- #busy 2026-03-06..2026-03-08\n`,
  '2026-02-23.md': '- [x] #session flexibility 18:30 75min 8/10 for:low-split\n',
};
const crowded: Notes = {
  'goals.md':
    '- #goal back by:2026-06-14\n- #need flexibility 2/week 60min 8/10 gap:72h\n- #goal handstand by:2026-09-30\n- #need skill 1/week 45min 5/10\n',
  'hours.md': `${noRecovery}- #free mon wed 18:00-20:00\n`,
};

describe('the rows of a plan', () => {
  it('show each session with its reason, the rest days, and what is other than last week', () => {
    const plan = shown(fitting);
    assert.equal(planTitle(plan), 'Mon, Mar 2 to Sun, Mar 8: 3 sessions placed, nothing left out');
    assert.equal(
      inText(plan),
      block(`
        At the top
          (check-all) Write 3 sessions | into 7 notes, one undo step -> write
        Sessions
          (pass-filled) Mon, Mar 2 18:30: flexibility for low-split | 1 h 15 min | as kept in 1 of the last 4 weeks -> tick
          (pass-filled) Wed, Mar 4 19:30: strength for low-split | 1 h | coach -> tick
          (pass-filled) Thu, Mar 5 18:30: flexibility for low-split | 1 h 15 min | 70 h after Monday's -> tick
          (pass-filled) Rest days: Tue, Mar 3; Fri, Mar 6; Sat, Mar 7; Sun, Mar 8 | a note each -> tick-rest-days
        Other than last week
          (arrow-swap) strength: new, Wednesday 19:30 -> nothing
          (arrow-swap) flexibility: new, Thursday 18:30 -> nothing
      `),
    );
  });

  it('say in one sentence why not everything fits, with the lines and what would help', () => {
    assert.equal(
      inText(shown(crowded)),
      block(`
        At the top
          (warning) 2 flexibility sessions for back 72 h apart and no other free hours do | not fit into one week. -> open
          (check-all) Write 2 sessions | into 7 notes, one undo step -> write
        Would make it fit
          (lightbulb) Make time on Friday, Saturday or Sunday | opens hours.md -> open
          (lightbulb) Ask for one less this week: 1 flexibility session for back | opens goals.md -> open
          (edit) Make it 48 h in place of 72 h between flexibility sessions for back | changes goals.md and plans again -> change
        Left out
          (circle-slash) flexibility for back | No place is left for flexibility: 72 h between flexibility sessions for back -> open
        Sessions
          (pass-filled) Mon, Mar 2 18:00: flexibility for back | 1 h | free from 18:00 to 20:00 -> tick
          (pass-filled) Wed, Mar 4 18:00: skill for handstand | 45 min | free from 18:00 to 20:00 -> tick
          (pass-filled) Rest days: Tue, Mar 3; Thu, Mar 5; Fri, Mar 6; Sat, Mar 7; Sun, Mar 8 | a note each -> tick-rest-days
        Lines that do not fit together
          (go-to-file) #need flexibility 2/week 60min 8/10 gap:72h | goals.md -> open
      `),
    );
  });

  it('say so, too, when nothing at all can be placed', () => {
    const away = { ...crowded, 'hours.md': `${crowded['hours.md']}- #busy 2026-03-02..2026-03-08\n` };
    const [first, ...others] = rowsOf(shown(away));
    assert.match(`${first?.label} ${first?.detail}`, /^\d .* the busy days 2026-03-02 to 2026-03-08/);
    assert.equal(first?.icon, 'warning');
    assert.equal(
      others.some(({ action }) => action.does === 'write'),
      false,
    );
    assert.ok(others.some(({ label }) => label.startsWith('#busy 2026-03-02..2026-03-08')));
  });

  it('write what is ticked and no note for a day that is given up', () => {
    const all = shown(fitting);
    const [monday] = all.plan.placed;
    assert.ok(monday);
    const writes = (more: Partial<ShownPlan>): Notes => {
      const write = rowsOf(shown(fitting, 'new', more)).find(({ id }) => id === 'write');
      assert.equal(write?.action.does, 'write');
      return changed(fitting, write?.action.does === 'write' ? write.action.changes : []);
    };
    assert.deepEqual(writes({}), changed(fitting, all.plan.changes));
    const some = writes({ unticked: new Set([sessionName(monday)]) });
    assert.deepEqual(Object.keys(some).sort(), [
      '2026-03-03.md',
      '2026-03-04.md',
      '2026-03-05.md',
      '2026-03-06.md',
      '2026-03-07.md',
      '2026-03-08.md',
    ]);
    const fewer = writes({ unticked: new Set([sessionName(monday)]), withRestDays: false });
    assert.deepEqual(Object.keys(fewer).sort(), ['2026-03-04.md', '2026-03-05.md']);
  });

  it('write nothing when nothing is ticked', () => {
    const { plan } = shown(fitting);
    const none = rowsOf(shown(fitting, 'new', { unticked: new Set(plan.placed.map(sessionName)) }));
    assert.deepEqual(none[0]?.action, { does: 'nothing' });
    assert.equal(none[0]?.label, 'Nothing is ticked, nothing is written');
  });

  it('show a missed session with its new place, and nothing of last week', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #free mon tue wed thu fri sat 18:00-20:00\n- #need flexibility 2/week 60min 8/10\n`,
      '2026-02-23.md': '- [ ] #session flexibility 18:00 60min 8/10\n',
      '2026-02-25.md': '- [ ] #session strength 18:00 60min 5/10 with:coach\n',
      '2026-02-26.md': '- [ ] #session flexibility 18:00 60min 8/10\n',
    };
    const plan = shown(notes, 'rearrange');
    assert.equal(planTitle(plan), 'The rest of this week: 1 session placed, nothing left out');
    assert.equal(
      inText(plan),
      block(`
        At the top
          (check-all) Write 1 session | into 2 notes, one undo step -> write
        New places
          (pass-filled) Sat, Feb 28 19:00: flexibility | 1 h | moved from Monday; 48 h after Thursday's -> tick
      `),
    );
    const [write] = rowsOf(plan);
    assert.equal(write?.action.does, 'write');
    const after = applied(notes, write?.action.does === 'write' ? write.action.changes : []);
    assert.deepEqual(rowsOf(shown(after, 'rearrange')), []);
  });

  it('warn when a part of a plan breaks a rule that the whole keeps', () => {
    // Thursday's session makes way for the one that was missed; without that, the two are too close.
    const notes: Notes = {
      'journal.md': `${noRecovery}- #free wed 18:00-19:00\n- #free thu sat 18:00-19:00\n- #need flexibility 2/week 60min 8/10\n`,
      '2026-02-23.md': '- [ ] #session flexibility 18:00 60min 8/10\n',
      '2026-02-26.md': '- [ ] #session flexibility 18:00 60min 8/10\n',
    };
    const { plan } = shown(notes, 'rearrange');
    assert.deepEqual(
      plan.placed.map(({ date: day }) => day),
      ['2026-02-25', '2026-02-28'],
    );
    const [, saturday] = plan.placed;
    assert.ok(saturday);
    const [write] = rowsOf(shown(notes, 'rearrange', { unticked: new Set([sessionName(saturday)]) }));
    assert.match(write?.detail ?? '', /\(warning\).*48 h/);
    assert.equal(rowsOf(shown(notes, 'rearrange'))[0]?.detail, undefined);
  });
});

describe('a sentence in lines', () => {
  it('is broken between words, and loses none', () => {
    assert.deepEqual(
      linesOf('one two three four', () => 9),
      ['one two', 'three', 'four'],
    );
    assert.deepEqual(
      linesOf('one two three four', (line) => (line === 0 ? 3 : 20)),
      ['one', 'two three four'],
    );
    assert.deepEqual(
      linesOf('unbreakable word', () => 4),
      ['unbreakable', 'word'],
    );
    assert.deepEqual(
      linesOf('', () => 4),
      [],
    );
  });
});
