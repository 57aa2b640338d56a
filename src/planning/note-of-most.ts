import type { Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { joinPath } from '../journal/note-path';

/**
 * The note to which a line of the plan is added: that in which most lines like it stand, else the journal's own, else
 * a new one in its folder.
 * @param otherwise Name of the new note.
 */
export function noteOfMost(
  journal: Journal,
  like: readonly { readonly note: NotePath }[],
  otherwise: string,
): NotePath {
  const counts = new Map<NotePath, number>();
  for (const { note } of like) counts.set(note, (counts.get(note) ?? 0) + 1);
  const [most] = [...counts].sort(([, one], [, other]) => other - one);
  if (most) return most[0];
  const own = joinPath(journal.root, 'journal.md');
  return journal.note(own) ? own : joinPath(journal.root, otherwise);
}
