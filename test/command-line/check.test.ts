import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import type { CheckReport } from '../../src/command-line/check-command';
import { noon, run } from './run';

const recovery = { '2026-03-01.md': '- [ ] #session recovery 11:00 60min 2/10\n' };

/** Two hard flexibility sessions within a day. */
const tooClose = {
  ...recovery,
  'journal.md': '#zone Europe/Lisbon\n',
  'log/2026-02-24.md': '- [x] #session flexibility 18:30 75min 7/10\n',
  'log/2026-02-25.md': '# Wednesday\n\n- [ ] #session flexibility 19:00-20:15 7/10\n',
};

async function json(notes: Readonly<Record<string, string>>, ...more: string[]): Promise<CheckReport> {
  const { out, error } = await run(['check', 'notes', '--json', ...more], notes);
  assert.equal(error, '');
  return JSON.parse(out) as CheckReport;
}

describe('check', () => {
  it('prints a line a finding, with its place as a terminal can open it, and their numbers', async () => {
    const { code, out } = await run(['check', 'notes', '--today', '2026-02-25'], tooClose);
    const [finding, sum, ...more] = out.split('\n');
    assert.match(
      finding ?? '',
      /^notes\/log\/2026-02-25\.md:3:7 warning gap-too-short 23 h 15 min after Tuesday's flexibility session; /,
    );
    assert.equal(sum, '0 errors, 1 warning, 0 for information');
    assert.deepEqual(more, ['']);
    assert.equal(code, 1);
  });

  it('prints exactly the promised JSON', async () => {
    const report = await json(tooClose, '--today', '2026-02-25');
    const line = '- [ ] #session flexibility 19:00-20:15 7/10';
    const message = report.findings[0]?.message ?? '';
    assert.match(message, /^23 h 15 min after /);
    assert.deepEqual(report, {
      today: '2026-02-25',
      findings: [
        {
          code: 'gap-too-short',
          severity: 'warning',
          file: 'log/2026-02-25.md',
          line: 3,
          column: 7,
          endLine: 3,
          endColumn: line.length + 1,
          message,
        },
      ],
      weeks: [
        {
          week: '2026-W09',
          planned: 3,
          done: 1,
          skipped: 0,
          overdue: 0,
          minutesPlanned: 210,
          minutesDone: 75,
        },
      ],
    });
    assert.deepEqual(Object.keys(report), ['today', 'findings', 'weeks']);
    assert.deepEqual(Object.keys(report.findings[0] ?? {}), [
      'code',
      'severity',
      'file',
      'line',
      'column',
      'endLine',
      'endColumn',
      'message',
    ]);
  });

  it('exits with 0 when there is nothing to mend', async () => {
    const { code, out } = await run(['check', 'notes'], recovery);
    assert.deepEqual([code, out], [0, '0 errors, 0 warnings, 0 for information\n']);
  });

  it('exits with 0 when all it has is for information', async () => {
    const notes = { 'goals.md': '#need skill 2/week\n', '2026-02-25.md': '- [ ] #session recovery 45min\n' };
    const { code, out } = await run(['check', 'notes', '--today', '2026-02-25'], notes);
    assert.match(out, / information week-under-minimum /);
    assert.match(out, /\n0 errors, 0 warnings, 1 for information\n$/);
    assert.equal(code, 0);
  });

  it('checks every week that holds a day note, however old', async () => {
    const report = await json(
      {
        '2019-04-02.md': '- [x] #session flexibility 18:30 75min 8/10\n- [x] #session recovery 60min\n',
        '2019-04-03.md': '- [x] #session flexibility 18:30 75min 8/10\n',
        '2026-02-24.md': '- [x] #session recovery 60min\n',
      },
      '--today',
      '2026-02-25',
    );
    assert.deepEqual(
      report.findings.map(({ code, file }) => [code, file]),
      [['gap-too-short', '2019-04-03.md']],
    );
    assert.deepEqual(
      report.weeks.map(({ week, done }) => [week, done]),
      [
        ['2019-W14', 3],
        ['2026-W09', 1],
      ],
    );
  });

  it('counts lines and columns from 1, whatever ends the lines', async () => {
    for (const ending of ['\n', '\r\n', '\r']) {
      const text = ['# Day', '', '- #measure split 9cmm', '- [x] #session recovery 60min'].join(ending);
      const { findings } = await json({
        '2026-02-24.md': text,
        'g.md': '#goal split by:2026-12-01\n#why it\n#metric gap to:0cm',
      });
      const [finding] = findings;
      assert.deepEqual(
        [finding?.code, finding?.line, finding?.column, finding?.endLine, finding?.endColumn],
        ['unreadable-field', 3, 18, 3, 22],
      );
    }
  });

  it('adds up the weeks of several journals, and checks each by itself', async () => {
    const notes = {
      'heron/journal.md': '',
      'heron/2026-02-24.md': '- [x] #session flexibility 18:30 75min 8/10\n- [x] #session recovery 60min\n',
      'swift/journal.md': '',
      'swift/2026-02-25.md': '- [x] #session flexibility 18:30 75min 8/10\n- [ ] #session recovery 60min\n',
    };
    const { findings, weeks } = await json(notes, '--today', '2026-02-25');
    assert.deepEqual(findings, []);
    assert.deepEqual(weeks, [
      {
        week: '2026-W09',
        planned: 4,
        done: 3,
        skipped: 0,
        overdue: 0,
        minutesPlanned: 270,
        minutesDone: 210,
      },
    ]);
  });

  it('says no path before the notes of the folder it stands in', async () => {
    const { checkLines } = await import('../../src/command-line/check-command');
    const finding = {
      code: 'bad-date',
      severity: 'warning',
      file: 'a.md',
      line: 1,
      column: 2,
      endLine: 1,
      endColumn: 3,
      message: 'Words',
    } as const;
    const report = { today: '2026-02-25', findings: [finding], weeks: [] } as unknown as CheckReport;
    for (const [folder, path] of [
      ['.', 'a.md'],
      ['notes/', 'notes/a.md'],
      ['../notes', '../notes/a.md'],
      ['/', '/a.md'],
    ] as const) {
      assert.match(
        checkLines(report, folder),
        new RegExp(`^${path}:1:2 warning bad-date Words\n`.replaceAll('.', '\\.')),
      );
    }
  });
});

describe('today', () => {
  const notes = { '2026-02-25.md': '- [ ] #session recovery 45min\n' };
  const today = async (
    words: readonly string[],
    machine: { readonly now?: number; readonly zone?: string },
    more: Readonly<Record<string, string>> = {},
  ) => {
    const { out } = await run(['check', 'notes', '--json', ...words], { ...notes, ...more }, machine);
    return (JSON.parse(out) as CheckReport).today;
  };
  /** 25 February, 23:30 in Greenwich: already the 26th in Tokyo, still the 25th in Lisbon. */
  const late = noon + 690;

  it('is the date on the clock of the zone: the one asked for, the journal’s, the machine’s', async () => {
    const tokyo = { 'journal.md': '#zone Asia/Tokyo\n' };
    assert.equal(await today([], { now: late, zone: 'Europe/Lisbon' }), '2026-02-25');
    assert.equal(await today([], { now: late, zone: 'Asia/Tokyo' }), '2026-02-26');
    assert.equal(await today([], { now: late, zone: 'Europe/Lisbon' }, tokyo), '2026-02-26');
    assert.equal(
      await today(['--zone', 'Europe/Lisbon'], { now: late, zone: 'Asia/Tokyo' }, tokyo),
      '2026-02-25',
    );
    assert.equal(await today(['--today', '2026-03-01'], { now: late }, tokyo), '2026-03-01');
  });

  it('is each journal’s own, where they lie in several zones', async () => {
    const { out } = await run(
      ['check', 'notes', '--json'],
      {
        'heron/journal.md': '#zone Asia/Tokyo\n',
        'heron/2026-02-25.md': '- [ ] #session recovery 45min\n',
        'swift/journal.md': '#zone Europe/Lisbon\n',
        'swift/2026-02-25.md': '- [ ] #session recovery 45min\n',
      },
      { now: late, zone: 'UTC' },
    );
    const report = JSON.parse(out) as CheckReport;
    assert.equal(report.today, '2026-02-25');
    assert.deepEqual(
      report.findings.filter(({ code }) => code === 'session-overdue').map(({ file }) => file),
      ['heron/2026-02-25.md'],
    );
  });

  it('tells planned sessions from overdue ones', async () => {
    const codes = async (date: string) =>
      (await json(notes, '--today', date)).findings.map(({ code }) => code);
    assert.deepEqual(await codes('2026-02-25'), []);
    assert.deepEqual(await codes('2026-02-26'), ['session-overdue']);
  });
});

describe('text of notes in a terminal', () => {
  /** Colour, cursor, title and link commands, a C1 command, a line feed, and a right-to-left override. */
  const hostile = '\u001b[2J\u001b]0;title\u0007\u009b31mred\u202eder\u2066x';
  const notes = {
    ...recovery,
    [`${hostile}/journal.md`]: '',
    [`${hostile}/2026-02-24.md`]: `- #measure ${hostile} 9cm\n`,
  };
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not get through.
  const commands = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

  it('is only shown, never obeyed', async () => {
    const { out } = await run(['check', 'notes'], notes);
    assert.match(out, /2026-02-24\.md:1:/);
    assert.doesNotMatch(out, commands);
  });

  it('is escaped in JSON, and nothing of it is lost', async () => {
    const { out } = await run(['check', 'notes', '--json'], notes);
    assert.doesNotMatch(out, commands);
    const { findings } = JSON.parse(out) as CheckReport;
    assert(findings.length > 0);
    for (const { file } of findings) assert.equal(file, `${hostile}/2026-02-24.md`);
  });
});
