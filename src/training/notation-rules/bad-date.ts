import type { Note } from '../../journal/note';
import type { SourceRange } from '../../notation/source-range';
import type { Finding } from '../finding';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

/** The first line without its line ending. */
function firstLine(note: Note): SourceRange {
  const line = note.text.slice(0, note.lineStarts[1] ?? note.text.length);
  return { start: 0, end: line.replace(/\r\n$|[\r\n]$/, '').length };
}

function inName(note: Note): readonly Finding[] {
  if (note.name.kind !== 'other' || note.name.badDate === undefined) return [];
  const text = note.name.badDate;
  return [
    {
      code: 'bad-date',
      severity: 'error',
      note: note.path,
      range: firstLine(note),
      message: message(
        'The name of this note begins with {0}, which is in no calendar; the note belongs to no day',
        text,
      ),
      facts: { text, where: 'name' },
      related: [],
      remedies: [],
    },
  ];
}

/**
 * A date, in a field or in the name of a note, that no calendar has.
 *
 * A journal that breaks it:
 *
 *     2026-02-30.md
 *     - [ ] #session flexibility 18:30
 *
 * A journal that does not:
 *
 *     2026-02-28.md
 *     - [ ] #session flexibility 18:30
 */
export const badDate: NoteRule = {
  code: 'bad-date',
  check: (note) => [
    ...inName(note),
    ...note.reading.problems.flatMap((problem): Finding[] =>
      problem.code === 'bad-date'
        ? [
            {
              code: 'bad-date',
              severity: 'error',
              note: note.path,
              range: problem.range,
              message: message('{0} is in no calendar', problem.text),
              facts: { text: problem.text, where: 'field' },
              related: [],
              remedies: [],
            },
          ]
        : [],
    ),
  ],
};
