import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { run } from './run';

/** Two athletes who come first for different reasons, and one of whom all is well. */
const notes = {
  'heron/journal.md': '#athlete "Heron"\n#event 2026-03-01 "spring show"\n',
  'heron/2026-02-24.md': '- [x] #session flexibility 18:30 60min 5/10\n',
  'swift/journal.md': '#athlete "Swift" -- always in a hurry\n',
  'swift/2026-02-25.md': '- [x] #session strength 18:30 60min 5/10\n- #pain left-wrist 4/10\n',
  'wren/journal.md':
    '- #goal bridge by:2026-05-01\n- #why private words\n- #metric angle from:100deg to:150deg\n',
  'wren/2026-02-10.md': '- [x] #session flexibility 18:30 60min 5/10\n',
};

describe('roster', () => {
  it('says who needs a word first, why, and how things stand', async () => {
    const { code, out } = await run(['roster', 'notes', '--today', '2026-02-25'], notes);
    assert.equal(code, 0);
    assert.equal(
      out,
      [
        'Swift (swift/)',
        '  Open pain: left-wrist 4/10, noted on 2026-02-25',
        '  last logged on 2026-02-25, today; this week 1 of 1 session done; 0 errors, 0 warnings, 1 for information',
        'wren',
        '  Nothing logged for 15 days',
        '  last logged on 2026-02-10, 15 days ago; this week 0 of 0 sessions done; 0 errors, 0 warnings, 0 for information; next: bridge on 2026-05-01, in 65 days',
        'Heron (heron/)',
        '  nothing asks for a word',
        '  last logged on 2026-02-24, 1 day ago; this week 1 of 1 session done; 0 errors, 0 warnings, 1 for information; next: spring show on 2026-03-01, in 4 days',
        '',
      ].join('\n'),
    );
    assert.doesNotMatch(out, /private/);
  });

  it('is JSON for programs, with the places of its reasons', async () => {
    const { out } = await run(['roster', 'notes', '--today', '2026-02-25', '--json'], notes);
    const { today, athletes } = JSON.parse(out);
    assert.equal(today, '2026-02-25');
    assert.deepEqual(
      athletes.map(({ name }: { name: string }) => name),
      ['Swift', 'wren', 'Heron'],
    );
    const [swift] = athletes;
    assert.deepEqual(swift.reasons, [
      {
        kind: 'pain',
        message: 'Open pain: left-wrist 4/10, noted on 2026-02-25',
        file: 'swift/2026-02-25.md',
        line: 2,
        column: 3,
        endLine: 2,
        endColumn: 24,
      },
    ]);
    assert.deepEqual([swift.week.done, swift.week.planned], [1, 1]);
    assert.deepEqual(athletes[2].next, { is: 'event', name: 'spring show', date: '2026-03-01', days: 4 });
    assert.doesNotMatch(out, /private/);
  });

  it('takes no number of weeks', async () => {
    const { code, error } = await run(['roster', 'notes', '--weeks', '3'], notes);
    assert.deepEqual([code, error], [2, '--weeks does not go with roster.\n']);
  });
});
