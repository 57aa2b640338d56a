import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { applyTextEdits } from '../../src/notation/text-edit';
import type { NoteChange } from '../../src/planning/note-change';
import { run } from './run';

const today = ['--today', '2026-02-25'];

const notes: Readonly<Record<string, string>> = {
  'journal.md': '#zone Europe/Lisbon\n',
  'goals.md':
    '- #goal low-split by:2026-09-14\n- #need flexibility 2/week 60min 6/10\n- #rule recovery min:0/week\n',
  'hours.md': '- #free tue thu 18:00-20:00\n- #event 2026-04-11 "Studio evening"\n',
  '2026-02-17.md': '- [x] #session flexibility 18:00 60min\n',
  '2026-02-19.md': '- [x] #session flexibility 18:00 60min\n',
};

/** The notes with what was written, and what the run printed. */
async function writing(words: readonly string[], of = notes) {
  const after: Record<string, string> = { ...of };
  const result = await run(words, of, {
    writeNotes: (changes: readonly NoteChange[]) => {
      for (const change of changes)
        after[change.note] =
          change.kind === 'create' ? change.text : applyTextEdits(after[change.note] ?? '', change.edits);
      return undefined;
    },
  });
  return { ...result, after };
}

describe('block', () => {
  it('prints its weeks as JSON: what each is for, its volume, the change, its sessions', async () => {
    const { code, out, error } = await run(
      ['block', 'notes', '--weeks', '6', '--event', 'studio evening', '--json', ...today],
      notes,
    );
    assert.equal(error, '');
    assert.equal(code, 0);
    const report = JSON.parse(out);
    assert.equal(report.note, 'block 2026-W10 to 2026-W15.md');
    assert.deepEqual(
      report.weeks.map(({ week, role, minutes, changePercent }: Record<string, unknown>) => [
        week,
        role,
        minutes,
        changePercent,
      ]),
      [
        ['2026-W10', 'building', 120, 0],
        ['2026-W11', 'building', 120, 0],
        ['2026-W12', 'building', 120, 0],
        ['2026-W13', 'building', 120, 0],
        ['2026-W14', 'taper', 80, -33],
        ['2026-W15', 'taper', 60, -25],
      ],
    );
    assert.deepEqual(report.weeks[5].sessions[0], {
      date: '2026-04-07',
      start: '18:00',
      minutes: 30,
      kind: 'flexibility',
      for: 'low-split',
      reason: report.weeks[5].sessions[0].reason,
    });
    assert.deepEqual(report.warnings, []);
    assert.match(report.cautions.join(' '), /borrowed.*not medical advice/);
  });

  it('prints the same in words', async () => {
    const { out } = await run(['block', 'notes', '--weeks', '4', ...today], notes);
    assert.match(out, /^block 2026-W10 to 2026-W13\.md: 4 weeks, proven best$/m);
    assert.match(out, /^ {2}2026-W10 building: 120 min, 0 % \(flexibility 120\)$/m);
    assert.match(out, /^ {4}2026-03-03 18:00 60 min flexibility$/m);
  });

  it('writes the note of the block with --write, its day notes with --days, and plans it --again', async () => {
    const note = 'block 2026-W10 to 2026-W13.md';
    const alone = await writing(['block', 'notes', '--weeks', '4', '--write', ...today]);
    assert.deepEqual(Object.keys(alone.after), [...Object.keys(notes), note]);
    assert.match(alone.out, /^1 note written$/m);
    const { after } = await writing(['block', 'notes', '--weeks', '4', '--write', '--days', ...today]);
    assert.equal(Object.keys(after).length, Object.keys(notes).length + 1 + 28);
    const same = await writing(['block', 'notes', '--again', '--write', ...today], after);
    assert.match(same.out, /^0 notes written$/m);
    assert.deepEqual(same.after, after);
    const edited: Readonly<Record<string, string>> = {
      ...after,
      [note]: (after[note] ?? '').replace(/(W12 \| )2 x 60min/, '$12 x 45min'),
    };
    const again = await writing(['block', 'notes', '--again', '--write', ...today], edited);
    assert.match(again.out, /^ {4}2026-03-17 flexibility: 60 min becomes 45 min$/m);
    const changed = Object.keys(edited).filter((path) => again.after[path] !== edited[path]);
    assert.deepEqual(changed, ['2026-03-17.md', '2026-03-19.md']);
  });

  it('refuses an event that is not there, a block over a block, a past week, and none to plan again', async () => {
    const refusal = async (words: string[], of = notes) => {
      const { code, error } = await run(['block', 'notes', ...words, ...today], of);
      assert.equal(code, 2);
      return error.trim();
    };
    assert.equal(
      await refusal(['--weeks', '6', '--event', 'Gala']),
      'No event "Gala" in these weeks or the one behind them; there is "Studio evening" on 2026-04-11.',
    );
    assert.equal(
      await refusal(['--again']),
      'There is no block that is not over yet: no note with #block and a table.',
    );
    assert.equal(await refusal(['--from', '2026-W08']), '2026-W08 is over.');
    const { after } = await writing(['block', 'notes', '--weeks', '4', '--write', ...today]);
    assert.equal(
      await refusal([], after),
      'block 2026-W10 to 2026-W13.md has a row of 2026-W10 already; --again plans that block again.',
    );
  });

  it('exits with 1 when something is left out', async () => {
    const tight = { ...notes, 'hours.md': '- #free tue 18:00-19:00\n' };
    const { code, out } = await run(['block', 'notes', '--weeks', '4', ...today], tight);
    assert.equal(code, 1);
    assert.match(out, /^ {4}left out: flexibility\. /m);
  });
});
