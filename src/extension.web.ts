import type * as vscode from 'vscode';
import { activateJournal } from './editor/activate';
import type { PreviewExtension } from './editor/markdown-preview';
import { workspaceNoteReader } from './editor/workspace-note-source';

/** Entry of the web extension host: every note is read through the editor's own file system. */
export function activate(extension: vscode.ExtensionContext): PreviewExtension {
  return activateJournal(extension, (folder) => workspaceNoteReader(folder.uri));
}
