import type { Journal } from '../../journal/journal';
import type { Note, NotePath } from '../../journal/note';
import { folderOf as folderOfPath, joinPath } from '../../journal/note-path';
import { isoDate } from '../../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../../notation/time/iso-week';
import { folderOf, folderPattern } from '../day-note-path';

/** The Thursday of a week, whose year and month are the week's own. */
const thursdayOf = (week: IsoWeek) => isoDate(mondayOf(week) + 3);

/** The note of a week; of several the one with the shortest name, so that copies come last. */
export function weekNoteOf(journal: Journal, week: IsoWeek): Note | undefined {
  const found: Note[] = [];
  for (const note of journal.notes())
    if (note.name.kind === 'week' && note.name.week === week) found.push(note);
  return found.sort((one, other) => one.path.length - other.path.length)[0];
}

/** Where a new note of `week` belongs: beside the newest week note, or in the journal's own folder. */
export function newWeekNotePath(journal: Journal, week: IsoWeek): NotePath {
  let newest: { readonly path: NotePath; readonly week: IsoWeek } | undefined;
  for (const { path, name } of journal.notes()) {
    if (name.kind === 'week' && (!newest || name.week > newest.week)) newest = { path, week: name.week };
  }
  if (!newest) return joinPath(journal.root, `${week}.md`);
  const folder = folderOfPath(newest.path);
  const within = journal.root === '' ? folder : folder.slice(journal.root.length + 1);
  const pattern = folderPattern(within, thursdayOf(newest.week));
  const own = folderOf(pattern, thursdayOf(week));
  return joinPath(own === '' ? journal.root : joinPath(journal.root, own), `${week}.md`);
}
