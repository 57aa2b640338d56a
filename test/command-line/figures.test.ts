import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { run } from './run';

/** Six Mondays and Thursdays of one kind, sore on Thursdays; readings on Mondays. */
function notes(): Record<string, string> {
  const all: Record<string, string> = {
    'journal.md': '#zone Europe/Lisbon\n- #routine legs flexibility 60min regions:hamstrings\n',
    'goals.md':
      '- #goal low-split by:2026-06-14\n- #why a secret reason\n- #metric gap from:14cm to:6cm noise:0.3cm\n',
  };
  const mondays = ['01-05', '01-12', '01-19', '01-26', '02-02', '02-09'];
  const thursdays = ['01-08', '01-15', '01-22', '01-29', '02-05', '02-12'];
  for (const [week, day] of mondays.entries()) {
    all[`2026-${day}.md`] =
      `- [x] #session flexibility 18:00 60min 7/10 routine:legs -- secret words\n- #measure low-split gap ${13 - week / 2}cm warm\n`;
  }
  for (const day of thursdays) {
    all[`2026-${day}.md`] =
      '- [ ] #session flexibility 18:00 60min 7/10 routine:legs skipped:sore\n- #sore hamstrings 5/10\n';
  }
  return all;
}

const today = ['--today', '2026-02-16'];

async function json(command: string, ...more: string[]): Promise<Record<string, unknown>> {
  const { code, out, error } = await run([command, 'notes', '--json', ...today, ...more], notes());
  assert.deepEqual([code, error], [0, '']);
  assert.doesNotMatch(out, /secret/, 'private reasons and remarks are not printed');
  const report = JSON.parse(out) as { today: string; journals: Record<string, unknown>[] };
  assert.equal(report.today, '2026-02-16');
  return report.journals[0] ?? {};
}

async function lines(command: string, ...more: string[]): Promise<readonly string[]> {
  const { code, out, error } = await run([command, 'notes', ...today, ...more], notes());
  assert.deepEqual([code, error], [0, '']);
  assert.doesNotMatch(out, /secret/);
  return out.trimEnd().split('\n');
}

describe('progress', () => {
  it('says the pace, the noise and the dates of each series', async () => {
    const all = await lines('progress');
    assert(
      all.includes(
        '  gap, warm: At this pace the target is reached about 2026-04-13; the date is 2026-06-14. That is further ahead than the readings reach back; -0.5 cm a week (-0.5 to -0.5, 6 days); -2.5 cm since 2026-01-05; noise: changes below 0.83 cm (as written)',
      ),
      all.join('\n'),
    );
  });

  it('gives the figures of a goal beside its progress', async () => {
    const { goals } = (await json('progress')) as {
      goals: { figures: { verdict: Record<string, unknown>; metrics: Record<string, unknown>[] } }[];
    };
    const figures = goals[0]?.figures;
    assert.equal(figures?.verdict.code, 'in-time');
    assert.equal(figures.verdict.by, '2026-06-14');
    assert.equal(figures.metrics[0]?.condition, 'warm');
  });
});

describe('load', () => {
  it('adds up effort x minutes, a line a week', async () => {
    const all = await lines('load', '--weeks', '2');
    assert.equal(
      all[0],
      '2026-W07: 420 in 1 session, 60 min; monotony 0.38; strain 159; 0 % against the three weeks before; flexibility 420',
    );
    assert.equal(all[1], '2026-W08 so far: 0 in 0 sessions, 0 min');
  });

  it('gives every session its place', async () => {
    const { weeks } = (await json('load', '--weeks', '2')) as {
      weeks: { week: string; sessions: Record<string, unknown>[] }[];
    };
    assert.deepEqual(
      weeks.map(({ week }) => week),
      ['2026-W07', '2026-W08'],
    );
    const [session] = weeks[0]?.sessions ?? [];
    assert.deepEqual([session?.file, session?.line, session?.load], ['2026-02-09.md', 1, 420]);
  });
});

describe('recovery', () => {
  it('says what is missing, and takes the accepted chance', async () => {
    const all = await lines('recovery', '--chance', '0.3');
    assert.equal(all[0], 'The gap after which the chance of still being sore has fallen to 30 %:');
    assert.equal(
      all[1],
      '  flexibility (kind): 48 h kept (default); not enough notes yet (11 pairs, 6 still sore; needs 1 more pairs)',
    );
  });

  it('lists the pairs', async () => {
    const { subjects } = (await json('recovery')) as {
      subjects: { name: string; pairs: { hours: number; sore: boolean; first: object }[] }[];
    };
    assert.deepEqual(
      subjects.map(({ name, pairs }) => [name, pairs.length]),
      [
        ['flexibility', 11],
        ['hamstrings', 11],
      ],
    );
    assert.deepEqual(
      subjects[0]?.pairs.slice(0, 2).map(({ hours, sore }) => [hours, sore]),
      [
        [71, true],
        [167, false],
      ],
    );
  });
});

describe('adherence', () => {
  it('says done of planned, with the interval and the reasons', async () => {
    const all = await lines('adherence');
    assert.equal(all[0], 'all: 6 of 12 (50 %, 25 to 75 %); sore 6');
    assert(all.includes('  monday: 6 of 6 (100 %, 61 to 100 %)'));
    assert(all.includes('  thursday: 0 of 6 (0 %, 0 to 39 %); sore 6'));
    assert(all.includes('not enough notes yet to notice a drop: 12 sessions of 20'), all.join('\n'));
  });

  it('gives the parts by name', async () => {
    const journal = await json('adherence');
    const figures = journal.figures as Record<string, { key?: string | number; done: number }[]>;
    assert.deepEqual(
      figures.byMonth?.map(({ key, done }) => [key, done]),
      [
        ['2026-01', 4],
        ['2026-02', 2],
      ],
    );
  });
});

describe('a journal without sessions', () => {
  it('is no failure', async () => {
    for (const command of ['progress', 'load', 'recovery', 'adherence']) {
      const { code, out } = await run([command, 'notes', ...today], { 'journal.md': '' });
      assert.equal(code, 0);
      assert.notEqual(out.trim(), '');
    }
  });
});
