import { JournalFolders, journalFolders } from '../../src/journal/journal-folders';
import { isJournalFilePath, isNotePath } from '../../src/journal/note-path';
import { allOf, indexOf } from './index-of';

/** All that journals answer which are read from these texts by path: of an open document what is unsaved, else the disk's. */
export function expectedJournals(
  disk: ReadonlyMap<string, string>,
  open: ReadonlyMap<string, string>,
): readonly unknown[] {
  const effective = Object.fromEntries([...disk, ...open].filter(([path]) => isJournalFilePath(path)));
  const notes = Object.keys(effective).filter(isNotePath);
  const folders = new JournalFolders();
  for (const path of notes) folders.add(path);
  return journalFolders(notes).map((root) => {
    const files = Object.entries(effective).filter(([path]) => folders.around(path) === root);
    return allOf(indexOf(Object.fromEntries(files), root));
  });
}
