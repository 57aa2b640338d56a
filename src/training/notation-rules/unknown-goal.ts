import type { Journal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import type { Entry } from '../../notation/entries';
import { nearestWord } from '../../notation/near-miss';
import type { Located } from '../../notation/source-range';
import type { Finding } from '../finding';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

/** The goals that an entry speaks of. */
function goalsNamed(entry: Entry): readonly Located<string>[] {
  switch (entry.tag) {
    case 'session':
    case 'event':
      return entry.for;
    case 'measure':
      return entry.goal ? [entry.goal] : [];
    default:
      return [];
  }
}

function finding(note: Note, named: Located<string>, journal: Journal): Finding {
  const suggestion = nearestWord(named.value, journal.plan.goals.keys());
  return {
    code: 'unknown-goal',
    severity: 'warning',
    note: note.path,
    range: named.range,
    message:
      suggestion === undefined
        ? message('The journal has no goal {0}', named.value)
        : message('The journal has no goal {0}; did you mean {1}?', named.value, suggestion),
    facts: { goal: named.value, ...(suggestion === undefined ? {} : { suggestion }) },
    related: [],
    remedies: suggestion === undefined ? ['add-goal'] : ['replace-text', 'add-goal'],
  };
}

/**
 * A session, a measurement or an event names a goal that the journal does not have.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     2026-02-24.md
 *     - [x] #session flexibility for:low-spilt
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     2026-02-24.md
 *     - [x] #session flexibility for:low-split
 */
export const unknownGoal: NoteRule = {
  code: 'unknown-goal',
  check: (note, journal) =>
    note.reading.entries
      .flatMap(goalsNamed)
      .filter((named) => !journal.plan.goals.has(named.value))
      .map((named) => finding(note, named, journal)),
};
