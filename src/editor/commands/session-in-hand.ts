import * as vscode from 'vscode';
import type { Session } from '../../journal/journal';
import { dayNumber } from '../../notation/time/iso-date';
import { offsetInNote } from '../document-ranges';
import type { OpenJournal, OpenJournals } from '../open-journal';

/** A session together with its journal, as a view hands it to a command. */
export interface SessionInHand {
  readonly journal: OpenJournal;
  readonly session: Session;
}

function isSessionInHand(value: unknown): value is SessionInHand {
  return (
    typeof value === 'object' &&
    value !== null &&
    'journal' in value &&
    'session' in value &&
    Boolean(value.session)
  );
}

/** The session in which the cursor stands: on its line, or in what is nested under it. */
function sessionUnderCursor(journals: OpenJournals): SessionInHand | undefined {
  const editor = vscode.window.activeTextEditor;
  const found = editor && journals.noteOf(editor.document);
  if (!editor || !found || found.note.name.kind !== 'day') return undefined;
  const { journal, note } = found;
  const line = editor.selection.active.line;
  const offset = offsetInNote(note, editor.selection.active);
  const lineStart = note.lineStarts[line] ?? 0;
  const day = note.name.kind === 'day' ? dayNumber(note.name.date) : 0;
  const sessions = journal.journal.sessions(day, day).filter((session) => session.note === note.path);
  const session = sessions.find(({ entry }) => {
    const onLine =
      entry.itemRange.start >= lineStart && entry.itemRange.start <= offset && offset <= entry.range.end;
    const sameLine =
      entry.range.start >= lineStart && entry.range.start < (note.lineStarts[line + 1] ?? Infinity);
    const inBody = entry.body && offset >= entry.body.range.start && offset <= entry.body.range.end;
    return onLine || sameLine || inBody;
  });
  return session && { journal, session };
}

/** The session that a view handed over, or the one under the cursor; says so when there is none. */
export async function sessionInHand(
  journals: OpenJournals,
  handed: unknown,
): Promise<SessionInHand | undefined> {
  if (isSessionInHand(handed)) return handed;
  await journals.ready;
  const found = sessionUnderCursor(journals);
  if (!found)
    void vscode.window.showInformationMessage(
      vscode.l10n.t('Put the cursor on a session of a day note first: a line with #session.'),
    );
  return found;
}
