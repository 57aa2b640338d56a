import * as vscode from 'vscode';
import { decodeNote } from '../journal/decode-note';
import type { NotePath } from '../journal/note';
import { lineStarts } from '../notation/source-range';
import { type ChangeOutcome, changeOutcome, type NoteReturn, sameWords } from '../planning/change-outcome';
import type { NoteChange } from '../planning/note-change';
import { editorRange } from './document-ranges';
import type { OpenJournal } from './open-journal';

/** Where notes lie. */
export type NotePlaces = Pick<OpenJournal, 'uriOf'>;

/** A note no longer reads as it did when the change was planned, or a note to be created is there already. */
export class StaleChangeError extends Error {
  constructor(readonly uri: vscode.Uri) {
    super(
      vscode.l10n.t(
        '{0} has changed since this was planned. Nothing was written.',
        vscode.workspace.asRelativePath(uri),
      ),
    );
    this.name = 'StaleChangeError';
  }
}

/** Not every change was made, or not every changed note was saved. */
export class IncompleteChangeError extends Error {
  constructor(
    readonly places: NotePlaces,
    readonly outcome: ChangeOutcome,
    /** Notes that are changed in the editor, and not on the disk. */
    readonly unsaved: readonly NotePath[],
  ) {
    const named = (notes: readonly NotePath[]) =>
      notes.map((note) => vscode.workspace.asRelativePath(places.uriOf(note))).join(', ');
    const notesOf = (changes: readonly NoteChange[]) => changes.map(({ note }) => note);
    const { made, missing, other } = outcome;
    const written = notesOf(made).filter((note) => !unsaved.includes(note));
    const parts = [
      made.length === 0
        ? vscode.l10n.t('Nothing was written.')
        : vscode.l10n.t('Not everything was written.'),
      ...(written.length > 0 ? [vscode.l10n.t('Written: {0}.', named(written))] : []),
      ...(missing.length > 0 ? [vscode.l10n.t('Missing: {0}.', named(notesOf(missing)))] : []),
      ...(unsaved.length > 0
        ? [vscode.l10n.t('Changed in the editor, and not saved: {0}.', named(unsaved))]
        : []),
      ...(other.length > 0
        ? [vscode.l10n.t('Neither as before nor as wanted, so look at it: {0}.', named(notesOf(other)))]
        : []),
    ];
    super(parts.join(' '));
    this.name = 'IncompleteChangeError';
  }
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

async function bytesOf(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(uri);
  } catch {
    return undefined;
  }
}

/** One edit of the workspace for all `changes`, without looking at what the notes read now. */
export function workspaceEditFor(
  places: NotePlaces,
  changes: readonly (NoteChange | NoteReturn)[],
): vscode.WorkspaceEdit {
  const edit = new vscode.WorkspaceEdit();
  for (const change of changes) {
    const uri = places.uriOf(change.note);
    if (change.kind === 'create') {
      edit.createFile(uri, { ignoreIfExists: false, contents: new TextEncoder().encode(change.text) });
    } else if (change.kind === 'remove') {
      edit.deleteFile(uri, { ignoreIfNotExists: true });
    } else {
      const starts = lineStarts(change.before);
      for (const one of change.edits) edit.replace(uri, editorRange(starts, one.range), one.text);
    }
  }
  return edit;
}

/**
 * Whether the file of a document without unsaved words still holds what the document shows: the editor learns of a
 * change on the disk a moment after it. A file in another encoding cannot be told, and is left to the editor, which
 * saves over no file that is newer.
 */
async function isAsOnDisk(document: vscode.TextDocument): Promise<boolean> {
  if (document.isDirty) return true;
  const bytes = await bytesOf(document.uri);
  if (!bytes) return false;
  const text = decodeNote(bytes);
  return text === undefined || sameWords(text, document.getText());
}

/** @throws StaleChangeError when a note does not read as it did when its change was planned. */
export async function refuseStale(places: NotePlaces, changes: readonly NoteChange[]): Promise<void> {
  for (const change of changes) {
    const uri = places.uriOf(change.note);
    if (change.kind === 'create') {
      if (await exists(uri)) throw new StaleChangeError(uri);
      continue;
    }
    const document = await vscode.workspace.openTextDocument(uri);
    if (!sameWords(document.getText(), change.before) || !(await isAsOnDisk(document)))
      throw new StaleChangeError(uri);
  }
}

/** Saves the notes; gives those that could not be saved. */
export async function saveQuietly(uris: readonly vscode.Uri[]): Promise<readonly vscode.Uri[]> {
  const wanted = new Set(uris.map(String));
  const unsaved: vscode.Uri[] = [];
  for (const document of vscode.workspace.textDocuments) {
    if (!wanted.has(document.uri.toString()) || !document.isDirty) continue;
    const saved = await Promise.resolve(document.save()).catch(() => false);
    if (!saved) unsaved.push(document.uri);
  }
  return unsaved;
}

/** Notes among `changes` in which nothing is unsaved; what the athlete has not saved stays unsaved. */
export function savableNotes(
  places: NotePlaces,
  changes: readonly { readonly note: NotePath }[],
): vscode.Uri[] {
  const dirty = new Set(
    vscode.workspace.textDocuments
      .filter((document) => document.isDirty)
      .map((document) => document.uri.toString()),
  );
  return changes.map((change) => places.uriOf(change.note)).filter((uri) => !dirty.has(uri.toString()));
}

/** How a note reads now, in the editor when it is edited there. */
async function textNow(places: NotePlaces, { kind, note }: NoteChange): Promise<string | undefined> {
  const uri = places.uriOf(note);
  const open =
    kind === 'edit' && vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri.toString());
  if (open) return open.getText();
  const bytes = await bytesOf(uri);
  return bytes && new TextDecoder().decode(bytes);
}

/** What became of `changes`, as their notes read now. */
export async function outcomeNow(places: NotePlaces, changes: readonly NoteChange[]): Promise<ChangeOutcome> {
  const texts = new Map<NotePath, string | undefined>();
  for (const change of changes) texts.set(change.note, await textNow(places, change));
  return changeOutcome(changes, (note) => texts.get(note));
}

/** Makes an edit of the workspace; `false` when the editor did not, or only a part of it. */
export async function applyEdit(edit: vscode.WorkspaceEdit): Promise<boolean> {
  return Promise.resolve(vscode.workspace.applyEdit(edit)).catch(() => false);
}

/**
 * Makes all `changes` as one edit that one undo takes back, saves the notes that had nothing unsaved, and looks whether
 * all of it stands.
 * @throws StaleChangeError before anything is written, when a note reads otherwise than it did.
 * @throws IncompleteChangeError when not everything stands afterwards, with what does and what does not.
 */
export async function applyChanges(places: NotePlaces, changes: readonly NoteChange[]): Promise<void> {
  if (changes.length === 0) return;
  await refuseStale(places, changes);
  await makeMissing(places, changes, changes, savableNotes(places, changes));
}

/**
 * Makes the `missing` ones of `changes`, saves the `savable` notes, and looks what became of all.
 * @throws IncompleteChangeError when not everything stands afterwards.
 */
export async function makeMissing(
  places: NotePlaces,
  changes: readonly NoteChange[],
  missing: readonly NoteChange[],
  savable: readonly vscode.Uri[],
): Promise<void> {
  const isMade = await applyEdit(workspaceEditFor(places, missing));
  const outcome = await outcomeNow(places, changes);
  const unsaved = new Set((await saveQuietly(savable)).map(String));
  const notSaved = changes
    .map(({ note }) => note)
    .filter((note) => unsaved.has(places.uriOf(note).toString()));
  // Where the editor says that it made the edit, words that differ by now are those of someone who has gone on writing.
  const other = isMade ? [] : outcome.other;
  if (outcome.missing.length + other.length + notSaved.length > 0)
    throw new IncompleteChangeError(places, { ...outcome, other }, notSaved);
}
