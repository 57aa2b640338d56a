import { dayNumber } from '../../notation/time/iso-date';
import { related, sessionPlace } from '../session-place';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

/**
 * A session stands in two notes of one day, as when a sync program leaves a copy behind. It counts once, and the
 * finding stands on the copy.
 *
 * A journal that breaks it:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 18:30 75min
 *     2026-02-24 (conflicted copy).md
 *     - [x] #session flexibility 18:30 75min
 *
 * A journal that does not:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 18:30 75min
 *     2026-02-24 morning.md
 *     - [x] #session conditioning 07:00 30min
 */
export const duplicateSession: NoteRule = {
  code: 'duplicate-session',
  check(note, journal) {
    if (note.name.kind !== 'day') return [];
    const day = dayNumber(note.name.date);
    return journal.duplicateSessions(day, day).flatMap(({ kept, copies }) =>
      copies
        .filter((copy) => copy.note === note.path)
        .map((copy) => ({
          code: 'duplicate-session',
          severity: 'information',
          ...sessionPlace(copy),
          message: message(
            '{0} and {1} both hold this {2} session; it counts once',
            kept.note,
            copy.note,
            copy.kind,
          ),
          facts: { date: copy.date, kind: copy.kind, counted: kept.note, copy: copy.note },
          related: [related(sessionPlace(kept), message('The one that counts'))],
          remedies: [],
        })),
    );
  },
};
