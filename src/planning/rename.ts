import type { Journal } from '../journal/journal';
import type { NamedPlace, NamedThing } from '../journal/named-places';
import type { NotePath } from '../journal/note';
import { wordValue } from '../notation/field-values';
import type { TextEdit } from '../notation/text-edit';
import { isKind } from '../training/kinds';
import type { NoteChange } from './note-change';

/** Why a name cannot be given: it is no word of the notation, or something else has it. */
export type NameRefusal = 'not-a-word' | 'taken' | 'kind-or-region';

function isTaken(journal: Journal, thing: NamedThing, wanted: string): boolean {
  switch (thing.of) {
    case 'goal':
      return journal.plan.goals.has(wanted);
    case 'routine':
      return journal.plan.routines.has(wanted);
    case 'metric':
      return (journal.plan.goals.get(thing.goal)?.metrics ?? []).some(({ name }) => name === wanted);
  }
}

/**
 * Why `thing` cannot be named `wanted`; `undefined` when it can. Two things of one name could not be told apart
 * afterwards, and a goal named as a kind or a region would take the rules about that for its own.
 */
export function refusedName(journal: Journal, thing: NamedThing, wanted: string): NameRefusal | undefined {
  if (wordValue.read(wanted) === undefined) return 'not-a-word';
  if (wanted === thing.id) return undefined;
  if (isTaken(journal, thing, wanted)) return 'taken';
  const isSubject = isKind(wanted, journal.plan.kinds) || journal.names('region').includes(wanted);
  if (thing.of === 'goal' && isSubject) return 'kind-or-region';
  return undefined;
}

/**
 * Names a thing otherwise at `places` that name it: one change a note, in order of path. Remarks, titles and other
 * words of the athlete are left as they are.
 */
export function renameChanges(places: readonly NamedPlace[], wanted: string): readonly NoteChange[] {
  const byNote = new Map<NotePath, { readonly before: string; readonly edits: TextEdit[] }>();
  for (const { note, name } of places) {
    if (name.id === wanted) continue;
    const change = byNote.get(note.path) ?? { before: note.text, edits: [] };
    byNote.set(note.path, change);
    change.edits.push({ range: name.range, text: wanted });
  }
  return [...byNote].map(([note, { before, edits }]) => ({
    kind: 'edit',
    note,
    before,
    edits: edits.sort((one, other) => one.range.start - other.range.start),
  }));
}
