import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import type { NoteChange } from '../../src/planning/note-change';
import { run } from './run';

/** 25 February 2026 is the Wednesday of week 9. */
const notes = {
  'journal.md': '#zone Europe/Lisbon\n',
  'goals.md':
    '- #goal low-split by:2026-06-14\n- #need flexibility 1/week 60min 7/10 with:coach\n- #need skill 1/week 45min 5/10\n',
  'hours.md':
    '- #free wed 19:00-21:00 with:coach\n- #free fri 18:00-20:00\n- #free sun 10:00-12:00\n- #rule recovery min:0/week\n',
};
const today = ['--today', '2026-02-25'];

describe('plan', () => {
  it('prints the week after this one as JSON: sessions, what is left out, why, and what would help', async () => {
    const { code, out, error } = await run(['plan', 'notes', '--json', ...today], notes);
    assert.equal(error, '');
    assert.equal(code, 0);
    assert.deepEqual(JSON.parse(out), {
      today: '2026-02-25',
      weeks: ['2026-W10'],
      status: 'proven best',
      sessions: [
        {
          date: '2026-03-04',
          start: '19:00',
          minutes: 60,
          kind: 'flexibility',
          for: 'low-split',
          with: 'coach',
          reason: 'Wednesday 19:00: coach',
        },
        {
          date: '2026-03-06',
          start: '18:00',
          minutes: 45,
          kind: 'skill',
          for: 'low-split',
          reason: 'Friday 18:00: free from 18:00 to 20:00',
        },
      ],
      leftOut: [],
      differences: [],
      conflict: [],
      remedies: [],
    });
  });

  it('says in one sentence why a week is impossible, with the lines, and exits with 1', async () => {
    const away = { ...notes, 'hours.md': `${notes['hours.md']}- #busy 2026-03-04\n` };
    const { code, out } = await run(['plan', 'notes', '--week', '2026-W10', '--json', ...today], away);
    assert.equal(code, 1);
    const { status, sessions, leftOut, why, conflict, remedies } = JSON.parse(out);
    assert.equal(status, 'impossible');
    assert.deepEqual(
      sessions.map(({ kind }: { kind: string }) => kind),
      ['skill'],
    );
    assert.deepEqual(leftOut, [
      {
        week: '2026-W10',
        goal: 'low-split',
        kind: 'flexibility',
        why: 'No open hours of the week hold flexibility for 60 min',
      },
    ]);
    assert.equal(
      why,
      "1 flexibility session for low-split with coach, coach's hours on Wednesday 19:00-21:00, the busy day 2026-03-04 and no other free hours do not fit into one week",
    );
    assert.deepEqual(
      conflict.map(({ file, line, text }: { file: string; line: number; text: string }) => [
        file,
        line,
        text,
      ]),
      [
        ['goals.md', 2, '#need flexibility 1/week 60min 7/10 with:coach'],
        ['hours.md', 1, '#free wed 19:00-21:00 with:coach'],
        ['hours.md', 5, '#busy 2026-03-04'],
      ],
    );
    assert.deepEqual(
      remedies.map(({ title }: { title: string }) => title),
      [
        'Make time on Monday, Tuesday, Thursday or Saturday',
        "Train outside of coach's hours on Wednesday 19:00-21:00",
        'Train in spite of the busy day 2026-03-04',
      ],
    );
  });

  it('prints lines for people', async () => {
    const { out } = await run(['plan', 'notes', ...today], notes);
    assert.equal(
      out,
      [
        '2026-W10: proven best, 2 placed, 0 left out',
        '  2026-03-04 19:00 60 min flexibility for low-split (Wednesday 19:00: coach)',
        '  2026-03-06 18:00 45 min skill for low-split (Friday 18:00: free from 18:00 to 20:00)',
        '',
      ].join('\n'),
    );
  });

  it('plans several weeks, and hands over the changes only when they are to be written', async () => {
    const handed: NoteChange[][] = [];
    const writeNotes = (changes: readonly NoteChange[]) => {
      handed.push([...changes]);
      return undefined;
    };
    const words = ['plan', 'notes', '--weeks', '2', '--from', '2026-W10', ...today];
    await run(words, notes, { writeNotes });
    assert.equal(handed.length, 0);
    const { code, out } = await run([...words, '--write'], notes, { writeNotes });
    assert.equal(code, 0);
    assert.match(out, /^2026-W10 to 2026-W11: proven best, 4 placed, 0 left out\n/);
    assert.match(out, /\n14 notes written\n$/);
    assert.equal(handed[0]?.length, 14);
  });

  it('writes nothing when a note has changed meanwhile', async () => {
    const { code, out, error } = await run(['plan', 'notes', '--write', ...today], notes, {
      writeNotes: () => '"2026-03-04.md" is there already. Nothing was written.',
    });
    assert.deepEqual([code, out], [2, '']);
    assert.equal(error, '"2026-03-04.md" is there already. Nothing was written.\n');
  });

  it('is for one journal at a time', async () => {
    const { code, error } = await run(['plan', 'notes', ...today], {
      'dove/journal.md': '',
      'wren/journal.md': '',
    });
    assert.equal(code, 2);
    assert.equal(error, 'A plan is for one journal, and "notes" holds several: dove, wren.\n');
  });
});
