import type { Journal, Need, Routine } from '../../journal/journal';
import type { EntryBase } from '../../notation/entries';
import { readNote } from '../../notation/read-note';
import { applyTextEdits } from '../../notation/text-edit';
import { lengthInWords } from '../../training/wording';
import { DraftJournal } from '../draft-journal';
import { freeNotePath } from '../free-note-path';
import { insertLines } from '../insert-lines';
import type { NoteChange } from '../note-change';
import { noteOfMost } from '../note-of-most';
import { itemText } from '../session-block';

/** A routine or a need of one journal that is to stand in others as well. */
export type PlanLine =
  | { readonly is: 'routine'; readonly from: Journal; readonly routine: Routine }
  | { readonly is: 'need'; readonly from: Journal; readonly need: Need };

/**
 * What becomes of a line in another journal. `added`: it is new there. `there`: it stands there already, and nothing is
 * doubled. `taken`: a routine of its name stands there with other words, which stay.
 */
export interface LineInJournal {
  readonly state: 'added' | 'there' | 'taken';
  /** The routine that the need names and that is added with it. */
  readonly withRoutine?: string;
  readonly changes: readonly NoteChange[];
}

/** Every routine and need of a journal, in the order of its plan. */
export function planLinesOf(from: Journal): readonly PlanLine[] {
  const { routines, needs } = from.plan;
  return [
    ...[...routines.values()].map((routine) => ({ is: 'routine' as const, from, routine })),
    ...needs.map((need) => ({ is: 'need' as const, from, need })),
  ];
}

/** A tag from `#` to its last field: a remark belongs to the athlete for whom it was written. */
function tagText(
  journal: Journal,
  { note, entry }: { readonly note: string; readonly entry: EntryBase },
): string {
  return journal.note(note)?.text.slice(entry.range.start, entry.fieldsEnd) ?? '';
}

function routineText(journal: Journal, routine: Routine): string {
  const text = journal.note(routine.note)?.text ?? '';
  return itemText(text, routine.entry, `- ${tagText(journal, routine)}`);
}

/** What a need asks for, whoever asks: two that are alike in this are one. */
function needKey({ kind, perWeek, length, rating, gap, max, where, with: names, routine }: Need): string {
  const duration = (one: Need['length']) => one && [one.minutes, lengthInWords(one)];
  return JSON.stringify([kind, perWeek, duration(length), rating, duration(gap), max, where, names, routine]);
}

/** The words of a plan's line, for people: its tag without the `#`. */
export function planLineWords(line: PlanLine): string {
  const written = line.is === 'routine' ? line.routine : line.need;
  return tagText(line.from, written).slice(1).replace(/\s+/g, ' ');
}

function addRoutine(into: Journal, from: Journal, routine: Routine): LineInJournal {
  const known = into.plan.routines.get(routine.id);
  const text = routineText(from, routine);
  if (known) return { state: routineText(into, known) === text ? 'there' : 'taken', changes: [] };
  const path = noteOfMost(into, [...into.plan.routines.values()], 'routines.md');
  const note = into.note(path);
  const edit = note && insertLines(note.text, [text], [(entry) => entry.tag === 'routine']);
  if (note && edit)
    return {
      state: 'added',
      changes: [{ kind: 'edit', note: path, before: note.text, edits: [edit] }],
    };
  return { state: 'added', changes: [newPlanNote(into, 'routines', text)] };
}

/** A note of its own in the journal's folder, where nothing else takes the line. */
function newPlanNote(into: Journal, name: string, text: string): NoteChange {
  return { kind: 'create', note: freeNotePath(into, into.root, name), text: `${text}\n` };
}

/** A need asks every week where it is added: it must not come to stand among those of a goal. */
function addNeedLine(into: Journal, line: string): NoteChange {
  const everyWeek = into.plan.needs.filter((need) => need.goal === undefined);
  const path = noteOfMost(into, everyWeek, 'needs.md');
  const note = into.note(path);
  const edit =
    note && insertLines(note.text, [line], [(entry) => entry.tag === 'need' && entry.goal === undefined]);
  if (!note || !edit) return newPlanNote(into, 'needs', line);
  const ofGoals = (text: string) =>
    readNote(text).entries.filter((entry) => entry.tag === 'need' && entry.goal !== undefined).length;
  return ofGoals(applyTextEdits(note.text, [edit])) === ofGoals(note.text)
    ? { kind: 'edit', note: path, before: note.text, edits: [edit] }
    : newPlanNote(into, 'needs', line);
}

function addNeed(into: Journal, from: Journal, need: Need): LineInJournal {
  const key = needKey(need);
  if (into.plan.needs.some((one) => needKey(one) === key)) return { state: 'there', changes: [] };
  const draft = new DraftJournal(into);
  const routine = need.routine === undefined ? undefined : from.plan.routines.get(need.routine);
  const added = routine && addRoutine(into, from, routine);
  if (added) draft.write(added.changes);
  draft.write([addNeedLine(draft.journal, `- ${tagText(from, need)}`)]);
  return {
    state: 'added',
    ...(routine && added?.state === 'added' ? { withRoutine: routine.id } : {}),
    changes: draft.changes,
  };
}

/**
 * What becomes of a routine or a need of one journal in another: added to the plan there, a need as one of every week,
 * together with the routine that it names. What stands there already is not doubled, and a routine of the same name
 * with other words is left as it is.
 */
export function addPlanLine(into: Journal, line: PlanLine): LineInJournal {
  return line.is === 'routine'
    ? addRoutine(into, line.from, line.routine)
    : addNeed(into, line.from, line.need);
}
