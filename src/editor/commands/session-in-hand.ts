import * as vscode from 'vscode';
import type { Session } from '../../journal/journal';
import { dayNumber } from '../../notation/time/iso-date';
import { offsetInNote } from '../document-ranges';
import type { OpenJournal, OpenJournals } from '../open-journal';

/** A session together with its journal. */
export interface SessionInHand {
  readonly journal: OpenJournal;
  readonly session: Session;
}

/** What a row of a view carries: the journal's address, and the session as it was when the row was made. */
function isRow(value: unknown): value is { readonly journal: string; readonly session: Session } {
  return (
    typeof value === 'object' &&
    value !== null &&
    'journal' in value &&
    typeof value.journal === 'string' &&
    'session' in value &&
    Boolean(value.session)
  );
}

/** The session of a row as the note has it now: an edit made with the places of an older text would hit others. */
function sessionOfRow(
  journals: OpenJournals,
  row: { readonly journal: string; readonly session: Session },
): SessionInHand | undefined {
  const journal = journals.byId(row.journal);
  const { session } = row;
  const alike = journal?.journal
    .sessions(session.day, session.day)
    .filter(
      (one) =>
        one.note === session.note &&
        one.kind === session.kind &&
        one.entry.span?.value.start === session.entry.span?.value.start,
    );
  const found =
    alike?.find((one) => one.entry.range.start === session.entry.range.start) ??
    (alike?.length === 1 ? alike[0] : undefined);
  return journal && found && { journal, session: found };
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
  await journals.ready;
  if (isRow(handed)) {
    const ofRow = sessionOfRow(journals, handed);
    if (!ofRow)
      void vscode.window.showInformationMessage(
        vscode.l10n.t('The note has changed; the session is no longer there.'),
      );
    return ofRow;
  }
  const found = sessionUnderCursor(journals);
  if (!found)
    void vscode.window.showInformationMessage(
      vscode.l10n.t('Put the cursor on a session of a day note first: a line with #session.'),
    );
  return found;
}
