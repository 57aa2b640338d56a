import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Journal, Session } from '../../src/journal/journal';
import { dayNumber } from '../../src/notation/time/iso-date';
import { joinChanges } from '../../src/planning/join-changes';
import { addMeasurement } from '../../src/planning/measurement-change';
import type { NoteChange } from '../../src/planning/note-change';
import {
  changeSessionTime,
  moveSession,
  rateSession,
  skipSession,
  tickSession,
  turnIntoRecovery,
} from '../../src/planning/session-changes';
import {
  type EditedDocuments,
  inLines,
  withChanges,
  withRedo,
  withUndo,
  withWords,
} from './edited-documents';
import { date, journalOf } from './journal-of';

const days = ['2026-02-23', '2026-02-24', '2026-02-26'] as const;
const paths = days.map((day) => `${day}.md`);

const line = fc.constantFrom(
  '- [ ] #session flexibility 18:30 75min 7/10 for:split -- hips level',
  '* [x] #session skill 18:30-19:45 with:wren',
  '1. [ ] #session strength\n   - squats\n   - "slowly"',
  '- [ ] #session skill 07:00 skipped:work — a dash, été ｟wide｠ 🤸',
  '- evening\n\t- [ ] #session flexibility\t20:00\t60min  ',
  '> - [ ] #session conditioning 12:00 30min',
  '#session strength 10:00',
  '# Day',
  'Words with [a link](u) and `#session code`.',
  '- #sore hips 2/10',
  '<!-- #session hidden -->',
  '    code',
  '',
);
const note = fc
  .tuple(
    fc.array(fc.tuple(line, fc.constantFrom('\n', '\n', '\n\n', '\r\n', '\r\n')), { maxLength: 7 }),
    fc.constantFrom('', '\n', '\r\n', '- last words'),
  )
  .map(
    ([lines, end]) =>
      lines.map(([words, ending]) => words.replaceAll('\n', ending.slice(-2)) + ending).join('') + end,
  );

const changes = [
  'tick',
  'untick',
  'skip',
  'rate',
  'time',
  'recovery',
  'move',
  'measure',
  'two at once',
] as const;
type Asked = (typeof changes)[number];
interface Words {
  readonly note: string;
  readonly at: number;
  readonly words: string;
}
type Step =
  | {
      readonly do: 'ask';
      readonly asked: Asked;
      readonly pick: number;
      readonly meanwhile: Words | undefined;
    }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }
  | ({ readonly do: 'type' } & Words);

const typed = {
  note: fc.constantFrom(...paths),
  at: fc.nat(2000),
  words: fc.constantFrom('x', ' ', '\n', '- [ ] #session duo 09:00\n', '```\n', '#'),
};
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('ask' as const),
      asked: fc.constantFrom(...changes),
      pick: fc.nat(100),
      meanwhile: fc.option(fc.record(typed), { freq: 3, nil: undefined }),
    }),
  },
  { weight: 3, arbitrary: fc.constantFrom<Step>({ do: 'undo' }, { do: 'redo' }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('type' as const), ...typed }) },
);

/** The changes that a person asks for, and the characters of notes that they may touch beside adding lines. */
interface Asking {
  readonly changes: readonly NoteChange[];
  readonly own: readonly Session[];
}

function changesAsked(journal: Journal, asked: Asked, sessions: readonly Session[], pick: number): Asking {
  if (asked === 'measure') {
    const day = date(days[pick % days.length] ?? days[0]);
    const quantity = { value: 9.5, unit: 'cm' } as const;
    return { changes: addMeasurement(journal, day, { goal: 'split', metric: 'gap', quantity }), own: [] };
  }
  const session = sessions[pick % sessions.length];
  if (!session) return { changes: [], own: [] };
  const of = (change: readonly NoteChange[]): Asking => ({ changes: change, own: [session] });
  switch (asked) {
    case 'tick':
      return of(tickSession(journal, session, true));
    case 'untick':
      return of(tickSession(journal, session, false));
    case 'skip':
      return of(skipSession(journal, session, 'ill'));
    case 'rate':
      return of(rateSession(journal, session, pick % 11));
    case 'time':
      return of(changeSessionTime(journal, session, 400 + pick));
    case 'recovery':
      return of(turnIntoRecovery(journal, session));
    case 'move':
      return of(moveSession(journal, session, { date: date(days[(pick + 1) % days.length] ?? days[0]) }));
    case 'two at once': {
      const second = sessions.find(
        (one) => one.note === session.note && one.entry.range.start > session.entry.range.end,
      );
      if (session.movedFrom !== undefined || second?.movedFrom !== undefined) return { changes: [], own: [] };
      const both = [
        rateSession(journal, session, 3),
        ...(second ? [tickSession(journal, second, true)] : []),
      ];
      return { changes: joinChanges(both.flat()), own: second ? [session, second] : [session] };
    }
  }
}

/** A note in pieces: what lies between the lines of the sessions that are asked for, in lines that end alike. */
function untouchedPieces(text: string, own: readonly Session[]): readonly string[] {
  const pieces: string[] = [];
  let position = 0;
  for (const { entry } of [...own].sort((one, other) => one.entry.range.start - other.entry.range.start)) {
    pieces.push(inLines(text.slice(position, entry.itemRange.start)));
    position = entry.range.end;
  }
  return [...pieces, inLines(text.slice(position))];
}

/** Whether `text` holds the pieces in their order, the first at its start and the last at its end. */
function holdsPieces(text: string, pieces: readonly string[]): boolean {
  let rest = text;
  if (!rest.startsWith(pieces[0] ?? '')) return false;
  for (const piece of pieces.slice(0, -1)) {
    const at = rest.indexOf(piece);
    if (at < 0) return false;
    rest = rest.slice(at + piece.length);
  }
  return rest.endsWith(pieces.at(-1) ?? '');
}

/** Whether `after` is `before` with whole new lines in one place. */
function isLinesAdded(before: string, after: string): boolean {
  if (after.length <= before.length) return false;
  let same = 0;
  while (same < before.length && before[same] === after[same]) same += 1;
  // The new lines may begin as those do that they push on, so the place is looked for from its last possible one back.
  for (let at = same; at >= 0; at -= 1) {
    const added = after.slice(at, at + after.length - before.length);
    if (after.slice(at + added.length) !== before.slice(at)) return false;
    const isBehindALine = at === 0 || before[at - 1] === '\n' || added.startsWith('\n');
    const isBeforeALine = at === before.length || added.endsWith('\n') || before[at] === '\n';
    if (isBehindALine && isBeforeALine) return true;
  }
  return false;
}

function assertOnlyAsked(before: EditedDocuments, after: EditedDocuments, { own }: Asking): void {
  for (const path of new Set([...before.texts.keys(), ...after.texts.keys()])) {
    const old = before.texts.get(path);
    const now = after.texts.get(path);
    assert.ok(now !== undefined, `${path} is gone`);
    if (old === undefined || old === now) continue;
    const inNote = own.filter((session) => session.note === path);
    assert.ok(
      isLinesAdded(inLines(old), inLines(now)) ||
        (inNote.length > 0 && holdsPieces(inLines(now), untouchedPieces(old, inNote))),
      `${path}:\n${JSON.stringify(old)}\n${JSON.stringify(now)}`,
    );
    // A file whose lines all end alike keeps that ending.
    const endings = new Set(old.match(/\r\n|\n|\r/g));
    if (endings.size === 1) assert.deepEqual(new Set(now.match(/\r\n|\n|\r/g)), endings);
  }
}

describe('any script of changes, undo, redo and words written meanwhile', function () {
  this.timeout(120_000);
  it('leaves every character alone that no one asked to change', () => {
    const counts = { made: 0, refused: 0, undone: 0, redone: 0, notUndone: 0 };
    fc.assert(
      fc.property(fc.tuple(note, note, note), fc.array(step, { maxLength: 10 }), (texts, steps) => {
        const folder = Object.fromEntries(
          paths.flatMap((path, at) => (texts[at] === '' ? [] : [[path, texts[at] ?? '']])),
        );
        let documents: EditedDocuments = { texts: new Map(Object.entries(folder)), done: [], undone: [] };
        /** What the notes held before each set of changes that is done, and after each that is undone. */
        let before: ReadonlyMap<string, string>[] = [];
        let undone: ReadonlyMap<string, string>[] = [];
        for (const one of steps) {
          if (one.do === 'type') {
            documents = withWords(documents, one.note, one.at, one.words);
            continue;
          }
          if (one.do === 'undo') {
            const back = withUndo(documents);
            const wanted = before.at(-1);
            if (back) {
              counts.undone += 1;
              undone = [...undone, documents.texts];
              for (const { note } of documents.done.at(-1) ?? [])
                assert.equal(inLines(back.texts.get(note) ?? ''), inLines(wanted?.get(note) ?? ''));
              for (const path of paths)
                if (!documents.done.at(-1)?.some((change) => change.note === path))
                  assert.equal(back.texts.get(path), documents.texts.get(path));
              before = before.slice(0, -1);
              documents = back;
            } else if (wanted) counts.notUndone += 1;
            continue;
          }
          if (one.do === 'redo') {
            const again = withRedo(documents);
            if (!again) continue;
            counts.redone += 1;
            for (const { note } of again.done.at(-1) ?? [])
              assert.equal(inLines(again.texts.get(note) ?? ''), inLines(undone.at(-1)?.get(note) ?? ''));
            undone = undone.slice(0, -1);
            before = [...before, documents.texts];
            documents = again;
            continue;
          }
          const journal = journalOf(Object.fromEntries(documents.texts));
          const sessions = journal.sessions(dayNumber(date(days[0])), dayNumber(date(days[2])));
          const asking = changesAsked(journal, one.asked, sessions, one.pick);
          if (asking.changes.length === 0) continue;
          const meanwhile = one.meanwhile
            ? withWords(documents, one.meanwhile.note, one.meanwhile.at, one.meanwhile.words)
            : documents;
          const isTouched = asking.changes.some(({ note }) => note === one.meanwhile?.note);
          const after = withChanges(meanwhile, asking.changes);
          // Another one's words in one of the notes, even a line ending, and nothing is written in any of them.
          assert.equal(after === undefined, isTouched);
          if (after) {
            counts.made += 1;
            assertOnlyAsked(meanwhile, after, asking);
            before = [...before, meanwhile.texts];
            undone = [];
          } else counts.refused += 1;
          documents = after ?? meanwhile;
        }
      }),
      { seed: 20260226, numRuns: 500 },
    );
    for (const [what, count] of Object.entries(counts)) assert.ok(count > 20, `${count} ${what}`);
  });
});
