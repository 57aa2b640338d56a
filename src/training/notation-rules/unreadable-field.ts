import type { Journal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import { nearestWord } from '../../notation/near-miss';
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
  'no-table': 'Below this tag there is no table of weeks',
  'not-a-week': '{0} is not a week',
  'repeated-week': '{0} stands in this table already; the first one counts',
  'not-a-volume': '{0} is not a number of sessions and their length',
  'unknown-kind': 'No need of this journal asks for {0}, so that nothing is planned for it',
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

/** Columns of a block's table whose kind no need asks for: a slip of the pen, or a need that is gone. */
function unknownKinds(note: Note, { plan }: Journal): readonly Unreadable[] {
  const asked = new Set(plan.needs.map(({ kind }) => kind));
  return note.reading.entries
    .flatMap((entry) => (entry.tag === 'block' ? (entry.table?.kinds ?? []) : []))
    .filter(({ value }) => !asked.has(value))
    .map(({ value, range }): Unreadable => {
      const suggestion = nearestWord(value, asked);
      return {
        code: 'unreadable-field',
        reason: 'unknown-kind',
        range,
        text: value,
        ...(suggestion === undefined ? {} : { suggestion }),
      };
    });
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
  check: (note, journal) =>
    [...note.reading.problems, ...unknownKinds(note, journal)].flatMap((problem) =>
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
