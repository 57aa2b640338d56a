import { JournalFolders, journalFolders } from '../../src/journal/journal-folders';
import { isNotePath } from '../../src/journal/note-path';
import { allOf, indexOf } from './index-of';

/** All that journals answer which are read from these texts by path: of an open document what is unsaved, else the disk's. */
export function expectedJournals(
  disk: ReadonlyMap<string, string>,
  open: ReadonlyMap<string, string>,
): readonly unknown[] {
  const effective = Object.fromEntries([...disk, ...open].filter(([path]) => isNotePath(path)));
  const folders = new JournalFolders();
  for (const path of Object.keys(effective)) folders.add(path);
  return journalFolders(Object.keys(effective)).map((root) => {
    const notes = Object.entries(effective).filter(([path]) => folders.around(path) === root);
    return allOf(indexOf(Object.fromEntries(notes), root));
  });
}
