import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { run } from './run';

const goals = `# Split

- #goal low-split by:2026-06-14 "Front split on the floor"
- #why nobody is to read this in a terminal
- #metric gap from:14cm to:4cm
- [x] #step one-block by:2026-02-01
- [ ] #step no-block by:2026-04-01
- #need flexibility 2/week
`;

const notes = {
  'goals.md': goals,
  '2026-02-20.md': '- [x] #session flexibility 18:30 75min\n- #measure low-split gap 9cm\n',
  '2026-02-27.md': '- [ ] #session flexibility 18:30-19:45\n',
};

describe('progress', () => {
  it('says a few lines a goal', async () => {
    const { code, out } = await run(['progress', 'notes', '--today', '2026-02-25'], notes);
    assert.equal(code, 0);
    assert.equal(
      out,
      [
        'low-split: Front split on the floor (by 2026-06-14, 109 days left)',
        '  gap: from 14 cm, to 4 cm, latest 9 cm on 2026-02-20, 50 % of the way, 1 reading',
        '  gap: Not enough notes yet for a date: 1 of 5 days measured; noise: changes below 3.88 cm (assumed)',
        '  steps: 1 of 2',
        '  sessions done: 1',
        '  next session: 2026-02-27 18:30-19:45 flexibility',
        '',
      ].join('\n'),
    );
  });

  it('says what is missing, and what is over', async () => {
    const { out } = await run(['progress', 'notes', '--today', '2026-02-25'], {
      'heron/journal.md':
        '- [x] #goal bridge\n#metric angle from:120deg to:160deg sides\n#goal press by:2026-02-20\n',
      'swift/journal.md': '',
    });
    assert.equal(
      out,
      [
        'heron/',
        'bridge: bridge (closed)',
        '  angle: no readings yet',
        '  sessions done: 0',
        'press: press (by 2026-02-20, 5 days ago)',
        '  sessions done: 0',
        'swift/',
        'no goals yet',
        '',
      ].join('\n'),
    );
  });

  it('gives the same as JSON, each journal with its goals, places as people count them', async () => {
    const { code, out } = await run(['progress', 'notes', '--json', '--today', '2026-02-25'], notes);
    assert.equal(code, 0);
    const report = JSON.parse(out);
    assert.deepEqual(Object.keys(report), ['today', 'journals']);
    assert.equal(report.today, '2026-02-25');
    assert.equal(report.journals.length, 1);
    assert.equal(report.journals[0].journal, '');
    const [goal] = report.journals[0].goals;
    assert.equal(goal.id, 'low-split');
    assert.equal(goal.daysLeft, 109);
    assert.deepEqual([goal.file, goal.line, goal.column], ['goals.md', 3, 3]);
    const [reading] = goal.metrics[0].series[0].readings;
    assert.deepEqual(
      [reading.value, reading.date, reading.file, reading.line, reading.column],
      [9, '2026-02-20', '2026-02-20.md', 2, 3],
    );
    assert.equal(goal.nextSession.date, '2026-02-27');
    assert(!out.includes('"range"'));
  });

  it('keeps the private reason to itself', async () => {
    for (const more of [[], ['--json']]) {
      const { out } = await run(['progress', 'notes', ...more], notes);
      assert(!out.includes('nobody is to read this'));
    }
  });
});
