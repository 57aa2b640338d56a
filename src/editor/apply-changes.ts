import * as vscode from 'vscode';
import { lineStarts } from '../notation/source-range';
import type { NoteChange } from '../planning/note-change';
import { editorRange } from './document-ranges';
import type { OpenJournal } from './open-journal';

/** A note no longer reads as it did when the change was planned, or a note to be created is there already. */
export class StaleChangeError extends Error {
  constructor(readonly uri: vscode.Uri) {
    super(
      vscode.l10n.t(
        '{0} has changed since this was planned. Nothing was written; please run the command again.',
        vscode.workspace.asRelativePath(uri),
      ),
    );
    this.name = 'StaleChangeError';
  }
}

/** The editor did not make an edit, or only a part of it. */
export class IncompleteChangeError extends Error {
  constructor(readonly missing: readonly vscode.Uri[]) {
    super(
      vscode.l10n.t(
        'The editor did not write everything. Missing: {0}. Undo takes back what was written.',
        missing.map((uri) => vscode.workspace.asRelativePath(uri)).join(', '),
      ),
    );
    this.name = 'IncompleteChangeError';
  }
}

/** Line endings may be made alike by the editor when it opens a file; the characters may not differ. */
function sameWords(one: string, other: string): boolean {
  return one === other || one.replace(/\r\n?/g, '\n') === other.replace(/\r\n?/g, '\n');
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

/** One edit of the workspace for all `changes`, without looking at what the notes read now. */
export function workspaceEditFor(journal: OpenJournal, changes: readonly NoteChange[]): vscode.WorkspaceEdit {
  const edit = new vscode.WorkspaceEdit();
  for (const change of changes) {
    const uri = journal.uriOf(change.note);
    if (change.kind === 'create') {
      edit.createFile(uri, { ignoreIfExists: false, contents: new TextEncoder().encode(change.text) });
      continue;
    }
    const starts = lineStarts(change.before);
    for (const one of change.edits) edit.replace(uri, editorRange(starts, one.range), one.text);
  }
  return edit;
}

async function refuseStale(journal: OpenJournal, changes: readonly NoteChange[]): Promise<void> {
  for (const change of changes) {
    const uri = journal.uriOf(change.note);
    if (change.kind === 'create') {
      if (await exists(uri)) throw new StaleChangeError(uri);
      continue;
    }
    const document = await vscode.workspace.openTextDocument(uri);
    if (!sameWords(document.getText(), change.before)) throw new StaleChangeError(uri);
  }
}

/** Saves the notes that had nothing unsaved in them before; what the athlete has not saved stays unsaved. */
export async function saveQuietly(uris: readonly vscode.Uri[]): Promise<void> {
  const wanted = new Set(uris.map(String));
  for (const document of vscode.workspace.textDocuments)
    if (wanted.has(document.uri.toString()) && document.isDirty) await document.save();
}

/** Notes among `changes` that may be saved once they are changed. */
export function savableNotes(journal: OpenJournal, changes: readonly NoteChange[]): vscode.Uri[] {
  const dirty = new Set(
    vscode.workspace.textDocuments
      .filter((document) => document.isDirty)
      .map((document) => document.uri.toString()),
  );
  return changes.map((change) => journal.uriOf(change.note)).filter((uri) => !dirty.has(uri.toString()));
}

/**
 * Makes all `changes` as one edit that one undo takes back, and saves the notes that had nothing unsaved.
 * @throws StaleChangeError before anything is written, when a note reads otherwise than it did.
 * @throws IncompleteChangeError when the editor refused, with the notes that were not written.
 */
export async function applyChanges(journal: OpenJournal, changes: readonly NoteChange[]): Promise<void> {
  if (changes.length === 0) return;
  await refuseStale(journal, changes);
  const savable = savableNotes(journal, changes);
  const applied = await vscode.workspace.applyEdit(workspaceEditFor(journal, changes));
  if (!applied) {
    const missing: vscode.Uri[] = [];
    for (const change of changes) {
      const uri = journal.uriOf(change.note);
      if (change.kind === 'create' ? !(await exists(uri)) : true) missing.push(uri);
    }
    throw new IncompleteChangeError(missing);
  }
  await saveQuietly(savable);
}
