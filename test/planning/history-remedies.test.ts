import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { addDays } from '../../src/notation/time/iso-date';
import { parseIsoWeek } from '../../src/notation/time/iso-week';
import { type Remedy, remediesFor } from '../../src/planning/remedies';
import { journalWithSmallerWeek } from '../../src/planning/smaller-week';
import { checkJournal } from '../../src/training/check-journal';
import { type FindingCode, fillMessage } from '../../src/training/finding';
import { changed, date, journalOf, type Notes } from './journal-of';

function remedies(notes: Notes, code: FindingCode, today = '2026-02-25'): readonly Remedy[] {
  const options = { today: date(today), zone: 'UTC' };
  const journal = journalOf(notes);
  const finding = checkJournal(journal, options).find((one) => one.code === code);
  assert.ok(finding, `the journal has no ${code}`);
  return [...remediesFor(journal, finding, options)];
}

const titles = (all: readonly Remedy[]) => all.map(({ title }) => fillMessage(title));

describe('a goal whose pace is too slow', () => {
  const notes: Notes = {
    'goals.md': '- #goal low-split by:2026-03-31 "Split"\n- #why x\n- #metric gap from:14cm to:0cm\n',
    ...Object.fromEntries(
      ['01-26', '02-02', '02-09', '02-16', '02-23'].map((day, i) => [
        `2026-${day}.md`,
        `- #measure low-split gap ${14 - i / 2}cm\n`,
      ]),
    ),
  };

  it('can have its date moved to when the readings arrive', () => {
    const [remedy, ...more] = remedies(notes, 'goal-pace');
    assert.ok(remedy);
    assert.deepEqual([more, remedy.preferred], [[], false]);
    assert.equal(
      fillMessage(remedy.title),
      'Move the date to 2026-08-10, when the readings arrive at the latest',
    );
    assert.deepEqual(changed(notes, remedy.changes), {
      'goals.md': '- #goal low-split by:2026-08-10 "Split"\n- #why x\n- #metric gap from:14cm to:0cm\n',
    });
  });
});

describe('a gap worth changing', () => {
  const session = '- [x] #session flexibility 18:30 60min 7/10 routine:legs\n';
  function notesOf(rules: Notes): Notes {
    const notes: Record<string, string> = {
      'routines.md': '- #routine legs flexibility 60min regions:hamstrings\n',
    };
    for (const day of ['05', '06', '09', '10', '13', '14', '18', '19', '22', '23', '27', '28', '31']) {
      const sore = ['06', '10', '14', '19', '23', '28'].includes(day) ? '- #sore hamstrings 5/10\n' : '';
      notes[`2026-01-${day}.md`] = session + sore;
    }
    return { ...notes, ...rules };
  }
  const apply = (rules: Notes) => {
    const notes = notesOf(rules);
    const [remedy, ...more] = remedies(notes, 'gap-worth-changing');
    assert.ok(remedy?.preferred && more.length === 0);
    return [fillMessage(remedy.title), changed(notes, remedy.changes)];
  };

  it('is written into the rule that keeps another one, and nothing else of the line changes', () => {
    const rules = {
      'rules.md': '- #rule flexibility gap:20h max:4/week -- mine\n- #rule hamstrings gap:60h\n',
    };
    assert.deepEqual(apply(rules), [
      'Change the gap of flexibility to 60h',
      { 'rules.md': '- #rule flexibility gap:60h max:4/week -- mine\n- #rule hamstrings gap:60h\n' },
    ]);
  });

  it('is written as a rule of its own beside the others', () => {
    assert.deepEqual(apply({ 'rules.md': '# Rules\n\n- #rule flexibility gap:60h\n\nWords.\n' }), [
      'Write the rule #rule hamstrings gap:60h',
      { 'rules.md': '# Rules\n\n- #rule flexibility gap:60h\n- #rule hamstrings gap:60h\n\nWords.\n' },
    ]);
  });

  it('is written into journal.md, or into a note of its own, where there are no rules', () => {
    const [, own] = apply({ 'journal.md': '# Journal\n' });
    assert.deepEqual(own, { 'journal.md': '# Journal\n\n- #rule hamstrings gap:60h\n' });
    const [, fresh] = apply({});
    assert.deepEqual(fresh, { 'rules.md': '- #rule hamstrings gap:60h\n' });
  });
});

/** Done (x), skipped for being tired (-) or without a session (blank), day by day up to 2026-02-24. */
function slipping(pattern: string): Notes {
  const first = addDays(date('2026-02-25'), -pattern.length);
  const notes: Record<string, string> = {
    'goals.md':
      '- #goal low-split by:2026-06-14\n- #why x\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 60min 5/10\n- #goal handstand by:2026-09-30\n- #why x\n- #metric hold from:8s to:30s\n- #need skill 3/week 45min 5/10\n- #need recovery 1/week 45min 2/10\n',
  };
  for (const [index, mark] of [...pattern].entries()) {
    if (mark === ' ') continue;
    const line = `- [${mark === 'x' ? 'x' : ' '}] #session skill 18:00 45min 5/10${mark === 'x' ? '' : ' skipped:tired'}\n`;
    notes[`${addDays(first, index)}.md`] = line;
  }
  return notes;
}

/** The kinds that are written into the notes of the next week. */
function kindsWritten(notes: Notes, remedy: Remedy): readonly string[] {
  return Object.entries(changed(notes, remedy.changes))
    .flatMap(([path, text]) =>
      [...text.matchAll(/#session (\S+)/g)].map(([, kind]) => [path, kind ?? ''] as const),
    )
    .map(([, kind]) => kind)
    .sort();
}

describe('a slide', () => {
  const week = 'x x x x';
  const usual = `${week} ${week} ${week} ${week} ${week} ${week} `;

  it('can be met by a smaller week: as many sessions as were done of late, something of everything, and recovery', () => {
    const notes = slipping(`${usual}x- - - x- - -`);
    const [remedy, ...more] = remedies(notes, 'slipping');
    assert.ok(remedy);
    assert.deepEqual(titles([remedy, ...more]), [
      'Write next week smaller: 3 training sessions in place of 5',
    ]);
    // The nearest goal comes first in the second round, too.
    assert.deepEqual(kindsWritten(notes, remedy), ['flexibility', 'flexibility', 'recovery', 'skill']);
  });

  it('after a break can be met by a return in steps, borrowed and called so', () => {
    const notes = slipping(`${usual}${'- '.repeat(8)}`);
    const all = remedies(notes, 'slipping');
    assert.deepEqual(titles(all), [
      'Come back in steps: write next week with 2 training sessions, 50 % less than your fullest week (borrowed: Caterisano and others, 2019)',
      'Write next week smaller: 2 training sessions in place of 5',
    ]);
    const [ramp] = all;
    assert.ok(ramp);
    assert.deepEqual(kindsWritten(notes, ramp), ['flexibility', 'recovery', 'skill']);
  });

  it('is left alone where next week asks for no more than one session', () => {
    const notes = { ...slipping(`${usual}x- - - x- - -`), 'goals.md': '- #need skill 1/week 45min 5/10\n' };
    assert.deepEqual(remedies(notes, 'slipping'), []);
  });
});

describe('a journal with a smaller week', () => {
  const week = parseIsoWeek('2026-W10') ?? assert.fail();
  const counts = (goals: string, sessions: number) =>
    journalWithSmallerWeek(journalOf({ 'goals.md': goals }), week, sessions).plan.needs.map(
      ({ kind, perWeek }) => `${kind} ${perWeek.count ?? `${perWeek.minutes} min`}`,
    );

  it('gives sessions out in rounds, the nearest goal first, and keeps recovery', () => {
    const goals =
      '- #goal late by:2026-09-30\n- #need skill 3/week\n- #goal near by:2026-06-14\n- #need flexibility 2/week\n- #need recovery 1/week\n# Always\n- #need strength 2/week\n';
    assert.deepEqual(counts(goals, 1), ['flexibility 1', 'recovery 1']);
    assert.deepEqual(counts(goals, 4), ['skill 1', 'flexibility 2', 'recovery 1', 'strength 1']);
    assert.deepEqual(counts(goals, 99), ['skill 3', 'flexibility 2', 'recovery 1', 'strength 2']);
    assert.deepEqual(counts(goals, 0), ['recovery 1']);
  });

  it('cuts minutes in proportion', () => {
    assert.deepEqual(counts('- #need flexibility 180min/week 60min\n', 2), ['flexibility 120 min']);
  });
});
