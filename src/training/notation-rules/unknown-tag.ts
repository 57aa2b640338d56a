import { message } from '../wording';
import type { NoteRule } from './note-rule';

/**
 * A word after `#` is nearly a tag. Any other `#word` is the athlete's own.
 *
 * A journal that breaks it:
 *
 *     2026-02-24.md
 *     - [x] #sesion flexibility 18:30
 *
 * A journal that does not:
 *
 *     2026-02-24.md
 *     - #camping in the hills
 */
export const unknownTag: NoteRule = {
  code: 'unknown-tag',
  check: (note) =>
    note.reading.problems.flatMap((problem) =>
      problem.code === 'unknown-tag'
        ? [
            {
              code: 'unknown-tag',
              severity: 'information',
              note: note.path,
              range: problem.range,
              message: message('{0} is no tag; did you mean {1}?', problem.text, problem.suggestion),
              facts: { text: problem.text, suggestion: problem.suggestion },
              related: [],
              remedies: ['replace-text'],
            },
          ]
        : [],
    ),
};
