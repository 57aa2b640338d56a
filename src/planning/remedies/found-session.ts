import type { Session } from '../../journal/journal';
import type { SessionEntry } from '../../notation/entries';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { sessionPlace } from '../../training/session-place';
import type { ToMend } from './remedy';

/** Days on which the session of an entry may stand: that of its note, or the one it was moved to. */
function daysOf(entry: SessionEntry, written: IsoDate): readonly IsoDate[] {
  return entry.moved ? [entry.moved.value, written] : [written];
}

/** The session on which a finding stands, or `undefined` when it stands on something else. */
export function foundSession({ journal, finding }: ToMend): Session | undefined {
  const note = journal.note(finding.note);
  if (note?.name.kind !== 'day') return undefined;
  const { date } = note.name;
  for (const entry of note.reading.entries) {
    if (entry.tag !== 'session' || entry.range.end < finding.range.start) continue;
    if (entry.range.start > finding.range.start) break;
    for (const day of daysOf(entry, date).map(dayNumber)) {
      const found = journal.sessions(day, day).find((session) => {
        const place = sessionPlace(session);
        return place.note === note.path && place.range.start === finding.range.start;
      });
      if (found) return found;
    }
  }
  return undefined;
}
