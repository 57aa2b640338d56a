import type * as vscode from 'vscode';
import { activateJournal } from './editor/activate';
import type { PreviewExtension } from './editor/markdown-preview';
import { workspaceNoteReader } from './editor/workspace-note-source';
import { DiskNoteSource } from './journal/sources/disk-note-source';

/** Entry of the Node extension host: notes on a disk are read from it directly, all others through the editor. */
export function activate(extension: vscode.ExtensionContext): PreviewExtension {
  return activateJournal(extension, (folder) =>
    folder.uri.scheme === 'file' ? new DiskNoteSource(folder.uri.fsPath) : workspaceNoteReader(folder.uri),
  );
}
