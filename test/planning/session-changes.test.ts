import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  changeSessionTime,
  moveSession,
  rateSession,
  skipSession,
  tickSession,
  turnIntoRecovery,
} from '../../src/planning/session-changes';
import { changed, date, journalOf, type Notes, sessionOf } from './journal-of';

const tuesday = '2026-02-24.md';
const thursday = '2026-02-26.md';

function line(text: string): Notes {
  return { [tuesday]: text };
}

describe('ticking a session', () => {
  it('fills the box and nothing else', () => {
    const notes = line('# Tuesday\n\n- [ ] #session flexibility 18:30 75min -- hips level\n  - warm-up\n');
    assert.deepEqual(
      changed(notes, tickSession(journalOf(notes), sessionOf(journalOf(notes), '2026-02-24'), true)),
      {
        [tuesday]: '# Tuesday\n\n- [x] #session flexibility 18:30 75min -- hips level\n  - warm-up\n',
      },
    );
  });

  it('empties the box again', () => {
    const notes = line('* [X] #session skill\r\n');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, tickSession(journal, sessionOf(journal, '2026-02-24'), false)), {
      [tuesday]: '* [ ] #session skill\r\n',
    });
  });

  it('gives a box to a session that has none', () => {
    const notes = line('- #session skill');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, tickSession(journal, sessionOf(journal, '2026-02-24'), true)), {
      [tuesday]: '- [x] #session skill',
    });
  });

  it('changes nothing when the box is as asked', () => {
    const notes = line('- [x] #session skill');
    const journal = journalOf(notes);
    assert.deepEqual(tickSession(journal, sessionOf(journal, '2026-02-24'), true), []);
  });
});

describe('skipping and rating a session', () => {
  it('writes the reason before the remark', () => {
    const notes = line('- [ ] #session skill 18:30 -- with the hoop\n');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, skipSession(journal, sessionOf(journal, '2026-02-24'), 'travel')), {
      [tuesday]: '- [ ] #session skill 18:30 skipped:travel -- with the hoop\n',
    });
  });

  it('replaces a reason', () => {
    const notes = line('- [ ] #session skill skipped:work for:hoop\n');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, skipSession(journal, sessionOf(journal, '2026-02-24'), 'ill')), {
      [tuesday]: '- [ ] #session skill skipped:ill for:hoop\n',
    });
  });

  it('adds a rating, and replaces the one that stands', () => {
    const notes = line('- [x] #session skill 18:30 -- good');
    const journal = journalOf(notes);
    const rated = changed(notes, rateSession(journal, sessionOf(journal, '2026-02-24'), 8));
    assert.deepEqual(rated, { [tuesday]: '- [x] #session skill 18:30 8/10 -- good' });
    const again = journalOf(rated);
    assert.deepEqual(changed(rated, rateSession(again, sessionOf(again, '2026-02-24'), 6)), {
      [tuesday]: '- [x] #session skill 18:30 6/10 -- good',
    });
  });
});

describe('changing the time of a session', () => {
  for (const [before, after] of [
    ['18:30 75min', '07:00 75min'],
    ['18:30-19:45', '07:00-08:15'],
    ['23:30-00:30', '07:00-08:00'],
    ['75min', '75min 07:00'],
  ]) {
    it(`${before} at 07:00 is ${after}`, () => {
      const notes = line(`- [ ] #session skill ${before} -- hoop\n`);
      const journal = journalOf(notes);
      assert.deepEqual(changed(notes, changeSessionTime(journal, sessionOf(journal, '2026-02-24'), 420)), {
        [tuesday]: `- [ ] #session skill ${after} -- hoop\n`,
      });
    });
  }

  it('keeps the length of a span that then ends at midnight', () => {
    const notes = line('- [ ] #session skill 18:30-19:30\n');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, changeSessionTime(journal, sessionOf(journal, '2026-02-24'), 23 * 60)), {
      [tuesday]: '- [ ] #session skill 23:00-00:00\n',
    });
  });
});

describe('turning a session into recovery', () => {
  it('replaces the kind, and an effort that would not be easy', () => {
    const notes = line(
      '- [ ] #session flexibility 18:30 75min 8/10 routine:back -- arms straight\n  - bridges\n',
    );
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, turnIntoRecovery(journal, sessionOf(journal, '2026-02-24'))), {
      [tuesday]: '- [ ] #session recovery 18:30 75min 2/10 routine:back -- arms straight\n  - bridges\n',
    });
  });

  it('writes an effort where none stood, and leaves an easy one', () => {
    const notes = {
      [tuesday]: '- [ ] #session flexibility\n',
      [thursday]: '- [ ] #session flexibility 1/10\n',
    };
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, turnIntoRecovery(journal, sessionOf(journal, '2026-02-24'))), {
      [tuesday]: '- [ ] #session recovery 2/10\n',
    });
    assert.deepEqual(changed(notes, turnIntoRecovery(journal, sessionOf(journal, '2026-02-26'))), {
      [thursday]: '- [ ] #session recovery 1/10\n',
    });
  });
});

describe('moving a session', () => {
  const from =
    '# Tuesday\n\n- [ ] #session flexibility 18:30 75min 7/10 for:split -- hips\n  - warm-up\n    - slowly\n  - splits\n\nTired.\n';

  it('leaves the line with its new date, and writes it with its body into the other note', () => {
    const notes = {
      [tuesday]: from,
      [thursday]: '# Thursday\n\n- [ ] #session strength 07:00\n  - pulls\n\nWords.\n',
    };
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(notes, moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') })),
      {
        [tuesday]: from.replace('for:split', 'for:split moved:2026-02-26'),
        [thursday]:
          '# Thursday\n\n- [ ] #session strength 07:00\n  - pulls\n' +
          '- [ ] #session flexibility 18:30 75min 7/10 for:split -- hips\n  - warm-up\n    - slowly\n  - splits\n' +
          '\nWords.\n',
      },
    );
  });

  it('makes the note of a day that has none, with the line endings of the journal', () => {
    const notes = line('- [ ] #session skill 18:30\r\n  - mounts\r\n');
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(notes, moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') })),
      {
        [tuesday]: '- [ ] #session skill 18:30 moved:2026-02-26\r\n  - mounts\r\n',
        [thursday]: '# Thursday, 2026-02-26\r\n\r\n- [ ] #session skill 18:30\r\n  - mounts\r\n',
      },
    );
  });

  it('writes a body with the line endings of the note it goes to', () => {
    const notes = {
      [tuesday]: '- [ ] #session skill 18:30\r\n  - mounts\r\n',
      [thursday]: 'Words\n',
      '2026-02-27.md': 'a\rb',
    };
    const journal = journalOf(notes);
    const session = sessionOf(journal, '2026-02-24');
    assert.equal(
      changed(notes, moveSession(journal, session, { date: date('2026-02-26') }))[thursday],
      'Words\n\n- [ ] #session skill 18:30\n  - mounts\n',
    );
    assert.equal(
      changed(notes, moveSession(journal, session, { date: date('2026-02-27') }))['2026-02-27.md'],
      'a\rb\r\r- [ ] #session skill 18:30\r  - mounts',
    );
  });

  it('gives it another time when asked', () => {
    const notes = line('- [ ] #session skill 18:30-20:00 with:wren\n');
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(
        notes,
        moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26'), start: 600 }),
      ),
      {
        [tuesday]: '- [ ] #session skill 18:30-20:00 with:wren moved:2026-02-26\n',
        [thursday]: '# Thursday, 2026-02-26\n\n- [ ] #session skill 10:00-11:30 with:wren\n',
      },
    );
  });

  it('on its own day changes the time only', () => {
    const notes = line('- [ ] #session skill 18:30\n');
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(
        notes,
        moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-24'), start: 600 }),
      ),
      { [tuesday]: '- [ ] #session skill 10:00\n' },
    );
  });

  it('stands un-ticked and without a reason where it goes', () => {
    const notes = line('- [x] #session skill skipped:work 18:30\n');
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(notes, moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') })),
      {
        [tuesday]: '- [x] #session skill 18:30 moved:2026-02-26\n',
        [thursday]: '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n',
      },
    );
  });

  it('leaves readings and other tags of the body on the day on which they were written', () => {
    const notes = line(
      '- [ ] #session skill 18:30\n  - mounts\n  - #sore hips 4/10\n    - since Sunday\n  - spins\n  - #measure hoop hold 20s\n',
    );
    const journal = journalOf(notes);
    const after = changed(
      notes,
      moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') }),
    );
    assert.equal(
      after[thursday],
      '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n  - mounts\n  - spins\n',
    );
    assert.equal(after[tuesday], notes[tuesday]?.replace('18:30', '18:30 moved:2026-02-26'));
  });

  it('takes off the indentation that the list around it had', () => {
    const notes = line('- evening\n\t- [ ] #session skill 18:30\n\t\t- mounts\n');
    const journal = journalOf(notes);
    assert.equal(
      changed(notes, moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') }))[
        thursday
      ],
      '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n\t- mounts\n',
    );
  });

  it('makes a list item of a line that is none', () => {
    const notes = line('Today:\n#session skill 18:30\nand words\n');
    const journal = journalOf(notes);
    assert.deepEqual(
      changed(notes, moveSession(journal, sessionOf(journal, '2026-02-24'), { date: date('2026-02-26') })),
      {
        [tuesday]: 'Today:\n#session skill 18:30 moved:2026-02-26\nand words\n',
        [thursday]: '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n',
      },
    );
  });

  it('moves a moved one on: the first line names the newest day', () => {
    const notes = line('- [ ] #session skill 18:30 moved:2026-02-25\n');
    const journal = journalOf(notes);
    const standing = sessionOf(journal, '2026-02-25');
    assert.equal(standing.movedFrom, '2026-02-24');
    assert.deepEqual(changed(notes, moveSession(journal, standing, { date: date('2026-02-26') })), {
      [tuesday]: '- [ ] #session skill 18:30 moved:2026-02-26\n',
      [thursday]: '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n',
    });
  });
});

describe('a session that stands on a day only because another day says it was moved there', () => {
  it('is written into its day when it is ticked', () => {
    const notes = line('- [ ] #session skill 18:30 moved:2026-02-26\n  - mounts\n');
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, tickSession(journal, sessionOf(journal, '2026-02-26'), true)), {
      [thursday]: '# Thursday, 2026-02-26\n\n- [x] #session skill 18:30\n  - mounts\n',
    });
  });
});
