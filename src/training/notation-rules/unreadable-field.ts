import type { NotationProblem, UnreadableReason } from '../../notation/notation-problem';
import type { Message } from '../finding';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

type Unreadable = Extract<NotationProblem, { code: 'unreadable-field' }>;

/** What is wrong; place 0 is the text in question. */
const wrong: Readonly<Record<UnreadableReason, string>> = {
  'unknown-field': '{0}: is no field of this tag',
  'unexpected-word': '{0} has no place in this tag',
  'repeated-field': '{0} is one too many; the tag has such a field already',
  'unknown-unit': '{0} has a unit that this tag does not know',
  'missing-unit': '{0} has no unit',
  'space-before-unit': '{0} has a blank before its unit',
  'not-a-date': '{0} is not a date; dates are written year-month-day',
  'not-a-time': '{0} is not a time of day',
  'not-a-length': '{0} is not a length of time',
  'not-a-quantity': '{0} is not a quantity',
  'not-a-rating': '{0} is not a rating from 0/10 to 10/10',
  'not-per-week': '{0} is not a number a week',
  'not-a-weekday': '{0} is not a weekday',
  'not-a-zone': '{0} is not a time zone that is known here',
  'not-a-side': '{0} is not a side of the body',
  'not-a-word': '{0} is not one word of letters, digits and hyphens',
  'empty-value': '{0} has nothing behind the colon',
  'missing-field': 'This tag lacks a field',
  'unclosed-quote': '{0} has no closing quotation mark',
  'front-matter': 'The front matter is not readable as YAML: {0}',
};

const listed: ReadonlySet<UnreadableReason> = new Set(['unknown-field', 'unexpected-word']);

function sentence(problem: Unreadable): Message {
  const what = wrong[problem.reason];
  if (problem.suggestion !== undefined)
    return message(`${what}; did you mean {1}?`, problem.text, problem.suggestion);
  const expected = (problem.expected ?? []).join(', ');
  if (expected === '') return message(what, problem.text);
  if (problem.reason === 'missing-field') return message('This tag lacks a field, such as {1}', '', expected);
  const list = listed.has(problem.reason) ? 'it takes {1}' : 'write it like {1}';
  return message(`${what}; ${list}`, problem.text, expected);
}

/**
 * A part of a tag cannot be read. It stands on exactly its characters, and the rest of the tag still counts.
 *
 * A journal that breaks it:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 81:30 75min
 *
 * A journal that does not:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 18:30 75min
 */
export const unreadableField: NoteRule = {
  code: 'unreadable-field',
  check: (note) =>
    note.reading.problems.flatMap((problem) =>
      problem.code === 'unreadable-field'
        ? [
            {
              code: 'unreadable-field',
              severity: 'warning',
              note: note.path,
              range: problem.range,
              message: sentence(problem),
              facts: {
                reason: problem.reason,
                text: problem.text,
                ...(problem.suggestion === undefined ? {} : { suggestion: problem.suggestion }),
              },
              related: [],
              remedies: problem.suggestion === undefined ? [] : ['replace-text'],
            },
          ]
        : [],
    ),
};
