import type { Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { joinPath } from '../journal/note-path';

/** A path in `folder` at which the journal has no file: `name.md`, `name 2.md` and so on. */
export function freeNotePath(journal: Journal, folder: NotePath, name: string): NotePath {
  let path = joinPath(folder, `${name}.md`);
  for (let number = 2; journal.file(path); number += 1) path = joinPath(folder, `${name} ${number}.md`);
  return path;
}
