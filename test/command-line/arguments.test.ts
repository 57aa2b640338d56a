import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { parseArguments } from '../../src/command-line/parse-arguments';
import { run } from './run';

const words = (line: string) => line.split(' ').filter((word) => word !== '');

describe('the words on the command line', () => {
  for (const [line, command] of [
    ['check notes', { kind: 'check', folder: 'notes', json: false }],
    ['progress notes --json', { kind: 'progress', folder: 'notes', json: true }],
    [
      '--today 2026-02-24 check --zone Europe/Lisbon notes',
      { kind: 'check', folder: 'notes', json: false, today: '2026-02-24', zone: 'Europe/Lisbon' },
    ],
    [
      'check --today=2026-02-24 -- --odd-folder',
      { kind: 'check', folder: '--odd-folder', json: false, today: '2026-02-24' },
    ],
    ['load notes --weeks 4', { kind: 'load', folder: 'notes', json: false, weeks: 4 }],
    [
      'recovery notes --chance 0.25 --weeks 26',
      { kind: 'recovery', folder: 'notes', json: false, weeks: 26, chance: 0.25 },
    ],
    [
      'calendar notes --from 2026-03-02 --to 2026-03-29 --alarm 30 --previous old.ics',
      {
        kind: 'calendar',
        folder: 'notes',
        json: false,
        from: '2026-03-02',
        to: '2026-03-29',
        alarmMinutes: 30,
        previous: 'old.ics',
      },
    ],
    ['adherence notes --json', { kind: 'adherence', folder: 'notes', json: true }],
    [
      'block notes --from 2026-W10 --weeks 8 --event Show --lighter 0 --write --days',
      {
        kind: 'block',
        folder: 'notes',
        json: false,
        again: false,
        first: '2026-W10',
        count: 8,
        event: 'Show',
        top: 100,
        limit: 10,
        lighter: 0,
        write: true,
        days: true,
      },
    ],
    ['plan notes', { kind: 'plan', folder: 'notes', json: false, count: 1, write: false }],
    [
      'plan notes --week 2026-W10 --json --write',
      { kind: 'plan', folder: 'notes', json: true, first: '2026-W10', count: 1, write: true },
    ],
    [
      'plan notes --weeks 12 --from 2026-W10',
      { kind: 'plan', folder: 'notes', json: false, first: '2026-W10', count: 12, write: false },
    ],
    ['--help', { kind: 'help' }],
    ['check -h', { kind: 'help' }],
    ['--version', { kind: 'version' }],
  ] as const) {
    it(`understand "${line}"`, () => assert.deepEqual(parseArguments(words(line)), command));
  }

  for (const [line, message] of [
    ['', 'Say what to do: check, progress, load, recovery, adherence, roster, calendar, plan or block.'],
    [
      'mend notes',
      'Unknown command "mend": check, progress, load, recovery, adherence, roster, calendar, plan or block.',
    ],
    ['check', 'Say which folder to check.'],
    ['progress', 'Say which folder to read.'],
    ['check a b', 'One folder at a time: "b" is one too many.'],
    ['check notes --today 2026-02-30', '"2026-02-30" is not a date such as 2026-02-24.'],
    ['check notes --today tomorrow', '"tomorrow" is not a date such as 2026-02-24.'],
    [
      'check notes --zone Lisbon/Europe',
      '"Lisbon/Europe" is not a time zone that this machine knows, such as Europe/Lisbon.',
    ],
    ['load notes --weeks 0', '"0" is not a number of weeks from 1 to 1000.'],
    ['load notes --weeks few', '"few" is not a number of weeks from 1 to 1000.'],
    ['check notes --weeks 4', '--weeks does not go with check.'],
    ['check notes --write', '--write does not go with check.'],
    ['plan notes --to 2026-03-08', '--to does not go with plan.'],
    ['plan notes --again', '--again does not go with plan.'],
    ['block notes --weeks 13', '"13" is not a number of weeks from 4 to 12.'],
    ['block notes --from 2026-W54', '"2026-W54" is not a week such as 2026-W10.'],
    ['block notes --week 2026-W10', '--week does not go with block.'],
    ['block notes --limit 40', '"40" is not a percentage from 1 to 30.'],
    ['block notes --top more', '"more" is not a percentage from 50 to 150.'],
    ['block notes --lighter 2', '"2" is not a number of weeks from 3 to 6, or 0 for none.'],
    ['block notes --days', 'Say --write beside --days.'],
    ['block notes --again --weeks 8', '--weeks does not go with --again: the table says it.'],
    ['plan notes --week 2026-W54', '"2026-W54" is not a week such as 2026-W10.'],
    ['plan notes --weeks 13', '"13" is not a number of weeks from 1 to 12.'],
    ['plan notes --week 2026-W10 --weeks 2', 'Say either --week, or --weeks with --from.'],
    ['recovery notes --chance 1', '"1" is not a chance between 0 and 1, such as 0.2.'],
    ['recovery notes --chance 20%', '"20%" is not a chance between 0 and 1, such as 0.2.'],
    ['load notes --chance 0.2', '--chance does not go with load.'],
    ['calendar notes', 'Say which days: --from 2026-03-02 --to 2026-03-29.'],
    ['calendar notes --from 2026-03-02', 'Say which days: --from 2026-03-02 --to 2026-03-29.'],
    ['calendar notes --from soon --to 2026-03-29', '"soon" is not a date such as 2026-02-24.'],
    ['calendar notes --from 2026-03-02 --to later', '"later" is not a date such as 2026-02-24.'],
    [
      'calendar notes --from 2026-03-29 --to 2026-03-02',
      'The calendar ends on 2026-03-02, before it begins on 2026-03-29.',
    ],
    [
      'calendar notes --from 2026-03-02 --to 2026-03-29 --alarm soon',
      '"soon" is not a number of minutes from 0 to 10080.',
    ],
    ['calendar notes --from 2026-03-02 --to 2026-03-29 --json', '--json does not go with calendar.'],
    ['calendar notes --from 2026-03-02 --to 2026-03-29 --weeks 3', '--weeks does not go with calendar.'],
    ['check notes --alarm 30', '--alarm does not go with check.'],
    ['adherence', 'Say which folder to read.'],
    ['check notes --todai 2026-02-24', "Unknown option '--todai'."],
    ['check notes --today', "Option '--today <value>' argument missing."],
    ['check notes --json=yes', "Option '--json' does not take an argument."],
  ] as const) {
    it(`are refused in one line: "${line}"`, async () => {
      const { code, out, error } = await run(words(line));
      assert.deepEqual({ code, out, error }, { code: 2, out: '', error: `${message}\n` });
    });
  }

  it('print help and version', async () => {
    const help = await run(['--help']);
    assert.equal(help.code, 0);
    for (const word of [
      'check',
      'progress',
      'load',
      'recovery',
      'adherence',
      '--today',
      '--zone',
      '--weeks',
      '--chance',
      'calendar',
      '--from',
      '--to',
      '--previous',
      '--alarm',
      '--json',
      '--version',
    ]) {
      assert(help.out.includes(word), word);
    }
    assert.deepEqual(await run(['--version']), { code: 0, out: '1.2.3\n', error: '' });
  });

  it('cannot smuggle commands to the terminal into a message', async () => {
    const { error } = await run(['\u001b[31mred\u001b[0m\nline']);
    assert.equal(
      error,
      'Unknown command "red line": check, progress, load, recovery, adherence, roster, calendar, plan or block.\n',
    );
  });
});

describe('a folder', () => {
  it('that is none is refused', async () => {
    assert.deepEqual(await run(['check', 'elsewhere']), {
      code: 2,
      out: '',
      error: '"elsewhere" is not a folder that can be read.\n',
    });
  });

  it('without a journal is refused: a mistyped folder must not look like a clean one', async () => {
    for (const command of ['check', 'progress']) {
      const { code, out, error } = await run([command, 'notes'], { 'README.md': '# Words\n' });
      assert.deepEqual([code, out], [2, '']);
      assert.equal(error, 'No journal in "notes": neither a note named journal.md nor a day note.\n');
    }
  });
});
