import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import esbuild from 'esbuild';
import { after, before, describe, it } from 'mocha';

describe('the bundled command line, as a process', () => {
  let folder = '';

  before(async () => {
    folder = mkdtempSync(join(tmpdir(), 'command-line-'));
    await esbuild.build({
      absWorkingDir: process.cwd(),
      entryPoints: ['src/command-line.ts'],
      outfile: join(folder, 'command-line.js'),
      bundle: true,
      platform: 'node',
      format: 'cjs',
      target: 'es2022',
      logLevel: 'silent',
    });
    mkdirSync(join(folder, 'notes', 'log'), { recursive: true });
    const write = (path: string, content: string | Uint8Array) =>
      writeFileSync(join(folder, 'notes', path), content);
    write('journal.md', '\ufeff#zone Europe/Lisbon\r\n');
    write('log/2026-02-24.md', '\ufeff- [x] #session flexibility 18:30 75min 7/10\r\n');
    write('log/2026-02-25.md', '- [ ] #session flexibility 18:30 75min 7/10');
    write('log/2026-03-01.md', '- [ ] #session recovery 60min\r');
    write('log/2026-02-26.md', Uint8Array.of(0xff, 0xfe, 0));
    write('log/2026-02-27.md', '');
  });

  after(() => rmSync(folder, { recursive: true, force: true }));

  function start(...words: string[]) {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['command-line.js', ...words], {
      cwd: folder,
      encoding: 'utf8',
    });
    return { status, stdout, stderr };
  }

  it('checks a folder and exits with 1 for a warning', () => {
    const { status, stdout, stderr } = start('check', 'notes', '--today', '2026-02-25');
    assert.equal(stderr, '');
    assert.match(
      stdout,
      /^notes\/log\/2026-02-25\.md:1:7 warning gap-too-short 22 h 45 min after .*\n0 errors, 1 warning, 0 for information\n$/,
    );
    assert.equal(status, 1);
  });

  it('prints one JSON value', () => {
    const { status, stdout } = start('check', 'notes', '--today', '2026-02-25', '--json');
    const { today, findings, weeks } = JSON.parse(stdout);
    assert.equal(today, '2026-02-25');
    assert.deepEqual(
      [findings[0].code, findings[0].file, findings[0].line, findings[0].column, findings[0].endColumn],
      ['gap-too-short', 'log/2026-02-25.md', 1, 7, 44],
    );
    assert.equal(weeks[0].week, '2026-W09');
    assert.equal(status, 1);
  });

  it('knows the day by itself, prints progress and its version, and exits with 0', () => {
    const { status, stdout } = start('progress', 'notes', '--json');
    assert.match(JSON.parse(stdout).today, /^\d{4}-\d{2}-\d{2}$/);
    assert.equal(status, 0);
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    assert.deepEqual(start('--version'), { status: 0, stdout: `${version}\n`, stderr: '' });
  });

  it('exits with 2 and one line when it is not understood', () => {
    const { status, stdout, stderr } = start('check', 'nowhere');
    assert.deepEqual([status, stdout, stderr], [2, '', '"nowhere" is not a folder that can be read.\n']);
  });

  it('writes nothing into the folder', () => {
    assert.equal(
      readFileSync(join(folder, 'notes', 'log', '2026-02-24.md'), 'utf8'),
      '\ufeff- [x] #session flexibility 18:30 75min 7/10\r\n',
    );
  });
});
