import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { type Remedy, remediesFor } from '../../src/planning/remedies';
import { checkJournal } from '../../src/training/check-journal';
import { type Finding, type FindingCode, fillMessage, type RemedyName } from '../../src/training/finding';
import { changed, date, journalOf, type Notes } from './journal-of';

const options = { today: date('2026-02-25'), zone: 'Europe/Berlin' };
const noRecovery = '- #rule recovery min:0/week\n';

function findings(notes: Notes, code: FindingCode): readonly Finding[] {
  return checkJournal(journalOf(notes), options).filter((finding) => finding.code === code);
}

/** The remedies for the first finding with the code. */
function remedies(notes: Notes, code: FindingCode): readonly Remedy[] {
  const [finding] = findings(notes, code);
  assert(finding, `the journal has no ${code}`);
  return [...remediesFor(journalOf(notes), finding, options)];
}

function remedy(notes: Notes, code: FindingCode, name: RemedyName): Remedy {
  const found = remedies(notes, code).find((one) => one.name === name);
  assert(found, `${code} has no remedy ${name}`);
  return found;
}

function titles(notes: Notes, code: FindingCode): readonly string[] {
  return remedies(notes, code).map(({ title }) => fillMessage(title));
}

const tuesday = '2026-02-24.md';
const wednesday = '2026-02-25.md';
const friday = '2026-02-27.md';

describe('two hard sessions too close together', () => {
  const notes: Notes = {
    'journal.md': noRecovery,
    [tuesday]: '- [x] #session flexibility 18:30 75min 8/10 -- back opening, deep\n',
    [wednesday]: '- [ ] #session flexibility 18:30 75min 7/10 -- front splits\n  - warm-up\n',
    [friday]: '- [ ] #session strength 18:30 60min 6/10\n',
  };

  it('can be mended in these ways, the move preferred', () => {
    assert.deepEqual(titles(notes, 'gap-too-short'), [
      'Move it to Saturday, 2026-02-28: the first day that breaks no rule; parts two hard days',
      'Move it to Sunday, 2026-03-01, at 18:30: parts two hard days',
      "Move it to Friday, 2026-02-27, at 17:00: parts two hard days; 69 h after Tuesday's",
      'Swap it with the strength session of Friday',
      "Turn Wednesday's flexibility session into recovery at effort 2",
      'Mark it skipped: sore',
      'Mark it skipped: tired',
      'Mark it skipped: ill',
      'Mark it skipped: injured',
      'Mark it skipped: work',
      'Mark it skipped: travel',
      'Mark it skipped: other',
    ]);
    assert.deepEqual(
      remedies(notes, 'gap-too-short')
        .filter(({ preferred }) => preferred)
        .map(({ name }) => name),
      ['move-to-legal-day'],
    );
    assert.equal(remedies(notes, 'gap-too-short')[0]?.preferred, true);
  });

  it('moves the later one, with its body, to the first day that breaks no rule', () => {
    // Friday 18:30 is taken by strength; Thursday is not 48 h away.
    const after = changed(notes, remedy(notes, 'gap-too-short', 'move-to-legal-day').changes);
    assert.deepEqual(after, {
      [wednesday]:
        '- [ ] #session flexibility 18:30 75min 7/10 moved:2026-02-28 -- front splits\n  - warm-up\n',
      '2026-02-28.md':
        '# Saturday, 2026-02-28\n\n- [ ] #session flexibility 18:30 75min 7/10 -- front splits\n  - warm-up\n',
    });
    assert.deepEqual(findings({ ...notes, ...after }, 'gap-too-short'), []);
  });

  it('swaps it with another session: both lines stay, and both stand again on the other day', () => {
    const after = changed(notes, remedy(notes, 'gap-too-short', 'swap-with-another-day').changes);
    assert.deepEqual(after, {
      [wednesday]:
        '- [ ] #session flexibility 18:30 75min 7/10 moved:2026-02-27 -- front splits\n  - warm-up\n' +
        '- [ ] #session strength 18:30 60min 6/10\n',
      [friday]:
        '- [ ] #session strength 18:30 60min 6/10 moved:2026-02-25\n' +
        '- [ ] #session flexibility 18:30 75min 7/10 -- front splits\n  - warm-up\n',
    });
    assert.deepEqual(findings({ ...notes, ...after }, 'gap-too-short'), []);
  });

  it('turns it into recovery, or marks it skipped', () => {
    assert.deepEqual(changed(notes, remedy(notes, 'gap-too-short', 'turn-into-recovery').changes), {
      [wednesday]: '- [ ] #session recovery 18:30 75min 2/10 -- front splits\n  - warm-up\n',
    });
    assert.deepEqual(changed(notes, remedy(notes, 'gap-too-short', 'mark-skipped').changes), {
      [wednesday]: '- [ ] #session flexibility 18:30 75min 7/10 skipped:sore -- front splits\n  - warm-up\n',
    });
  });

  it('is not moved into the past, and goes into the next week when this one has no place', () => {
    const full: Notes = {
      'journal.md': `${noRecovery}- #busy 2026-02-26..2026-03-02\n`,
      [tuesday]: '- [x] #session flexibility 18:30 75min 8/10\n',
      [wednesday]: '- [ ] #session flexibility 18:30 75min 7/10\n',
    };
    assert.equal(
      titles(full, 'gap-too-short')[0],
      'Move it to Tuesday, 2026-03-03: the first day that breaks no rule',
    );
  });

  it('has no move when nothing is legal, and still the others', () => {
    const none: Notes = {
      'journal.md': `${noRecovery}- #busy 2026-02-26..2026-03-12\n`,
      [tuesday]: '- [x] #session flexibility 18:30 75min 8/10\n',
      [wednesday]: '- [ ] #session flexibility 18:30 75min 7/10\n',
    };
    assert.equal(
      titles(none, 'gap-too-short')[0],
      "Turn Wednesday's flexibility session into recovery at effort 2",
    );
  });

  it('does not move what is agreed with somebody else for a swap', () => {
    const booked = { ...notes, [friday]: '- [ ] #session strength 18:30 60min 6/10 with:coach\n' };
    assert.ok(!remedies(booked, 'gap-too-short').some(({ name }) => name === 'swap-with-another-day'));
  });
});

describe('a session outside the free hours', () => {
  it('moves to another hour of its day, else to another day at an hour that is free', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #free wed 18:00-21:00\n- #free fri 17:00-20:00\n`,
      [wednesday]: '- [ ] #session skill 07:00 75min\n',
      '2026-02-26.md': '- [ ] #session strength 18:30 60min\n',
    };
    const [first, second] = findings(notes, 'outside-free-hours').map(
      (finding) => [...remediesFor(journalOf(notes), finding, options)][0],
    );
    assert.equal(fillMessage(first?.title ?? assert.fail()), 'Move it to 18:00 on the same day');
    assert.deepEqual(changed(notes, first?.changes ?? []), {
      [wednesday]: '- [ ] #session skill 18:00 75min\n',
    });
    assert.equal(
      fillMessage(second?.title ?? assert.fail()),
      'Move it to Friday, 2026-02-27: the first day that breaks no rule; parts two hard days',
    );
  });

  it('names the hour when a free one differs from the session’s own', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #free fri 17:00-18:30\n`,
      [wednesday]: '- [ ] #session skill 19:00-20:00\n',
    };
    const move = remedy(notes, 'outside-free-hours', 'move-to-legal-day');
    assert.equal(
      fillMessage(move.title),
      'Move it to Friday, 2026-02-27, at 17:30: the first place that breaks no rule',
    );
    assert.equal(
      changed(notes, move.changes)[friday],
      '# Friday, 2026-02-27\n\n- [ ] #session skill 17:30-18:30\n',
    );
  });
});

describe('sessions at one time', () => {
  it('moves the later one to the nearest hour of the day', () => {
    const notes: Notes = {
      'journal.md': noRecovery,
      [wednesday]: '- [ ] #session strength 18:00 75min 6/10\n- [ ] #session skill 18:45-19:45 5/10\n',
    };
    const after = changed(notes, remedy(notes, 'overlapping-sessions', 'move-to-legal-day').changes);
    assert.deepEqual(after, {
      [wednesday]: '- [ ] #session strength 18:00 75min 6/10\n- [ ] #session skill 19:30-20:30 5/10\n',
    });
    assert.deepEqual(findings({ ...notes, ...after }, 'overlapping-sessions'), []);
  });
});

describe('a missed session', () => {
  const notes: Notes = {
    'journal.md': noRecovery,
    '2026-02-23.md': '- [ ] #session skill 18:30 60min\n',
    '2026-02-26.md': '- [ ] #session conditioning 18:30 45min 5/10\n',
  };

  it('is ticked, skipped, or moved to a day that is not over; none is preferred', () => {
    const all = remedies(notes, 'session-overdue');
    assert.deepEqual(
      all.filter(({ name }) => name !== 'mark-skipped').map(({ title }) => fillMessage(title)),
      [
        'Tick it as done',
        'Move it to Wednesday, 2026-02-25: the first day that breaks no rule',
        'Move it to Friday, 2026-02-27, at 18:30: breaks no rule',
        'Move it to Saturday, 2026-02-28, at 18:30: breaks no rule',
      ],
    );
    assert.ok(all.every(({ preferred }) => !preferred));
    assert.deepEqual(changed(notes, remedy(notes, 'session-overdue', 'tick-as-done').changes), {
      '2026-02-23.md': '- [x] #session skill 18:30 60min\n',
    });
  });

  it('that another day only points to is ticked in its own day', () => {
    const moved: Notes = {
      'journal.md': noRecovery,
      '2026-02-23.md': '- [ ] #session skill 18:30 moved:2026-02-24\n',
    };
    assert.deepEqual(changed(moved, remedy(moved, 'session-overdue', 'tick-as-done').changes), {
      [tuesday]: '# Tuesday, 2026-02-24\n\n- [x] #session skill 18:30\n',
    });
  });
});

describe('a week without rest', () => {
  const days = ['23', '24', '25', '26', '27', '28'].map((day) => `2026-02-${day}.md`);
  const done = (path: string) => [
    path,
    `- [${path <= wednesday ? 'x' : ' '}] #session conditioning 18:30 45min 5/10\n`,
  ];
  const notes: Notes = {
    'journal.md': noRecovery,
    ...Object.fromEntries(days.map(done)),
    '2026-03-01.md': '- [ ] #session skill 10:00 60min 5/10\n',
  };

  it('moves the last session to a day that has training already, so that a day comes free', () => {
    const after = changed(notes, remedy(notes, 'no-rest-day', 'move-to-legal-day').changes);
    assert.ok('2026-02-28.md' in after);
    assert.deepEqual(findings({ ...notes, ...after }, 'no-rest-day'), []);
  });
});

describe('a week without recovery', () => {
  const notes: Notes = {
    'journal.md': '- #free mon tue wed thu fri 18:00-21:00\n- #routine easy recovery 30min\n  - feet up\n',
    '2026-02-23.md': '- [x] #session skill 18:30 60min\n',
    '2026-02-26.md': '- [ ] #session skill 18:30 60min 5/10\n',
  };

  it('gets a session on a day that allows it, or has one of its sessions turned', () => {
    assert.deepEqual(titles(notes, 'no-recovery-session'), [
      'Add a recovery session on Wednesday, 2026-02-25, at 18:00',
      "Turn Thursday's skill session into recovery at effort 2",
    ]);
    const after = changed(notes, remedy(notes, 'no-recovery-session', 'add-recovery-session').changes);
    assert.deepEqual(after, {
      [wednesday]:
        '# Wednesday, 2026-02-25\n\n- [ ] #session recovery 18:00 30min 2/10 routine:easy\n  - feet up\n',
    });
    assert.deepEqual(findings({ ...notes, ...after }, 'no-recovery-session'), []);
  });
});

describe('pain that is not cleared', () => {
  const notes: Notes = {
    'journal.md': `${noRecovery}- #routine back flexibility 75min regions:lower-back,shoulders\n`,
    '2026-02-23.md': '- #pain lower-back 5/10 -- sharp when arching\n',
    '2026-02-26.md': '- [ ] #session flexibility 18:30 75min 8/10 routine:back\n',
  };

  it('is written down as over today, which is never the preferred way', () => {
    const clear = remedy(notes, 'open-pain', 'clear-pain');
    assert.equal(clear.preferred, false);
    const after = changed(notes, clear.changes);
    assert.deepEqual(after, { [wednesday]: '# Wednesday, 2026-02-25\n\n- #pain lower-back 0/10 clear\n' });
    assert.deepEqual(findings({ ...notes, ...after }, 'open-pain'), []);
  });

  it('is no matter for an easy session', () => {
    const after = changed(notes, remedy(notes, 'open-pain', 'turn-into-recovery').changes);
    assert.deepEqual(findings({ ...notes, ...after }, 'open-pain'), []);
  });
});

describe('a goal that lacks something', () => {
  const goals = 'goals.md';

  it('gets a #why beneath it, to be filled in, in the note’s own way', () => {
    const notes: Notes = {
      [goals]: '# Goals\r\n\r\n- #goal hoop by:2026-06-14\r\n  - body\r\n- #metric hold from:3s to:20s\r\n',
    };
    assert.deepEqual(changed(notes, remedy(notes, 'goal-without-why', 'add-why').changes), {
      [goals]:
        '# Goals\r\n\r\n- #goal hoop by:2026-06-14\r\n  - body\r\n- #why \r\n- #metric hold from:3s to:20s\r\n',
    });
  });

  it('gets no second #why while the first waits for its words', () => {
    const notes: Notes = { [goals]: '- #goal hoop by:2026-06-14\n- #why \n- #metric hold from:3s to:20s\n' };
    assert.deepEqual(remedies(notes, 'goal-without-why'), []);
  });

  it('gets a date: its event’s first, then some weeks ahead', () => {
    const notes: Notes = {
      [goals]:
        '- #goal hoop "Hoop" -- at last\n- #why fun\n- #metric hold to:20s\n- #event 2026-05-30 "summer show" for:hoop\n',
    };
    assert.deepEqual(titles(notes, 'goal-without-date'), [
      'Set the date to 2026-05-30, summer show',
      'Set the date to 2026-05-20, 12 weeks from today',
      'Set the date to 2026-04-22, 8 weeks from today',
      'Set the date to 2026-08-26, 26 weeks from today',
    ]);
    assert.deepEqual(changed(notes, remedy(notes, 'goal-without-date', 'add-date').changes), {
      [goals]:
        '- #goal hoop "Hoop" by:2026-05-30 -- at last\n- #why fun\n- #metric hold to:20s\n- #event 2026-05-30 "summer show" for:hoop\n',
    });
  });

  it('gets a metric from its first reading, or an empty one', () => {
    const notes: Notes = { [goals]: '- #goal hoop by:2026-06-14\n- #why fun\n' };
    assert.deepEqual(changed(notes, remedy(notes, 'goal-without-metric', 'add-metric').changes), {
      [goals]: '- #goal hoop by:2026-06-14\n- #why fun\n- #metric reading from: to:\n',
    });
    const measured = {
      ...notes,
      [tuesday]: '- #measure hoop hold 6s\n',
      [wednesday]: '- #measure hoop hold 7s\n',
    };
    assert.deepEqual(changed(measured, remedy(measured, 'goal-without-metric', 'add-metric').changes), {
      [goals]: '- #goal hoop by:2026-06-14\n- #why fun\n- #metric hold from:6s to:\n',
    });
  });

  it('gets a metric that a reading names and that does not exist', () => {
    const notes: Notes = {
      [goals]: '- #goal hoop by:2026-06-14\n- #why fun\n- #metric hold to:20s\n- #need skill 1/week\n',
      [tuesday]: '- #measure hoop spins 3reps\n',
    };
    assert.deepEqual(changed(notes, remedy(notes, 'unknown-metric', 'add-metric').changes), {
      [goals]:
        '- #goal hoop by:2026-06-14\n- #why fun\n- #metric hold to:20s\n- #metric spins from:3reps to:\n- #need skill 1/week\n',
    });
  });
});

describe('a goal that does not exist', () => {
  const day = { [wednesday]: '- [ ] #session skill for:hoop\n' };

  for (const [name, before, after] of [
    ['in a new note', undefined, '# Goals\n\n- #goal hoop\n'],
    [
      'behind the other goals',
      '# Goals\n\n- #goal split\n- #why fun\n',
      '# Goals\n\n- #goal split\n- #why fun\n- #goal hoop\n',
    ],
    [
      'under a heading of its own, where goals have one',
      '# Goals\r\n\r\n## Split\r\n\r\n- #goal split\r\n- #why fun\r\n',
      '# Goals\r\n\r\n## Split\r\n\r\n- #goal split\r\n- #why fun\r\n\r\n## hoop\r\n\r\n- #goal hoop\r\n',
    ],
  ] as const) {
    it(`is added ${name}`, () => {
      const notes: Notes = before === undefined ? day : { ...day, 'goals.md': before };
      const add = remedy(notes, 'unknown-goal', 'add-goal');
      assert.equal(fillMessage(add.title), 'Add the goal hoop');
      assert.deepEqual(changed(notes, add.changes), { 'goals.md': after });
      assert.deepEqual(findings({ ...notes, ...changed(notes, add.changes) }, 'unknown-goal'), []);
    });
  }

  it('is read as the one that is meant, when it is a slip of the finger', () => {
    const notes: Notes = {
      'goals.md': '- #goal low-split\n',
      [wednesday]: '- [ ] #session skill for:low-spilt\n',
    };
    const first = remedies(notes, 'unknown-goal')[0];
    assert.equal(first?.preferred, true);
    assert.deepEqual(changed(notes, first?.changes ?? []), {
      [wednesday]: '- [ ] #session skill for:low-split\n',
    });
  });
});

describe('a unit that does not go with its metric', () => {
  it('is replaced, and the number kept', () => {
    const notes: Notes = {
      'goals.md': '- #goal split by:2026-06-14\n- #why fun\n- #metric gap from:14cm to:0cm\n',
      [wednesday]: '- #measure split gap 9,5deg warm\r\n',
    };
    assert.deepEqual(changed(notes, remedy(notes, 'unit-mismatch', 'replace-text').changes), {
      [wednesday]: '- #measure split gap 9,5cm warm\r\n',
    });
  });
});

describe('more than a rule allows', () => {
  it('a day over its cap gives a session to another day', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #rule any cap:2h\n`,
      '2026-02-26.md': '- [ ] #session strength 18:00 75min 6/10\n- [ ] #session skill 19:30 60min 5/10\n',
    };
    const after = changed(notes, remedy(notes, 'day-over-cap', 'move-to-legal-day').changes);
    assert.ok(after[friday]?.includes('#session skill 19:30 60min 5/10'));
    assert.deepEqual(findings({ ...notes, ...after }, 'day-over-cap'), []);
  });

  it('a week over its maximum gives a session to the next', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #rule skill max:1/week\n`,
      '2026-02-23.md': '- [x] #session skill 18:00 60min\n',
      [friday]: '- [ ] #session skill 18:00 60min\n',
    };
    const after = changed(notes, remedy(notes, 'week-over-maximum', 'move-to-legal-day').changes);
    assert.ok(after['2026-03-02.md']?.includes('#session skill 18:00 60min'));
    assert.deepEqual(findings({ ...notes, ...after }, 'week-over-maximum'), []);
  });
});

describe('a finding that the notes no longer show', () => {
  it('has no remedy', () => {
    const notes: Notes = { [tuesday]: '- [ ] #session skill 18:30\n' };
    const [finding] = findings(notes, 'session-overdue');
    assert(finding);
    assert.deepEqual([...remediesFor(journalOf({ [tuesday]: 'Words.\n' }), finding, options)], []);
    assert.deepEqual([...remediesFor(journalOf({}), finding, options)], []);
  });
});
