import * as vscode from 'vscode';
import { decodeFile, largestNote } from '../journal/decode-note';
import type { NotePath } from '../journal/note';
import { isIgnoredFolder, isJournalFileName, isJournalFilePath, joinPath } from '../journal/note-path';
import type { NoteFile, NoteSource, SourceChange, Stop } from '../journal/note-source';

/** Milliseconds after which a new folder is looked into once more. */
const secondLook = 1500;

/** A folder nested deeper is taken for a loop. */
const deepest = 24;

/** Lists and reads notes; a {@link watchNotes} beside it tells of changes. */
export type NoteReaderOfFolder = Pick<NoteSource, 'list' | 'read'>;

/** Address of a note below `folder`. */
export function noteUri(folder: vscode.Uri, path: NotePath): vscode.Uri {
  return path === '' ? folder : vscode.Uri.joinPath(folder, ...path.split('/'));
}

/** Path of `uri` below `folder`, or `undefined` when it lies elsewhere. */
export function notePath(folder: vscode.Uri, uri: vscode.Uri): NotePath | undefined {
  if (uri.scheme !== folder.scheme || uri.authority !== folder.authority) return undefined;
  const root = folder.path.endsWith('/') ? folder.path : `${folder.path}/`;
  return uri.path.startsWith(root) ? uri.path.slice(root.length) : undefined;
}

async function listBelow(
  uri: vscode.Uri,
  path: NotePath,
  depth: number,
  found: NoteFile[],
  stop: () => boolean,
) {
  if (depth > deepest || stop()) return;
  let names: [string, vscode.FileType][];
  try {
    names = await vscode.workspace.fs.readDirectory(uri);
  } catch {
    return;
  }
  for (const [name, type] of names.sort(([one], [other]) => (one < other ? -1 : 1))) {
    const below = joinPath(path, name);
    const child = vscode.Uri.joinPath(uri, name);
    if (type & vscode.FileType.Directory) {
      if (!isIgnoredFolder(name) && !(type & vscode.FileType.SymbolicLink))
        await listBelow(child, below, depth + 1, found, stop);
    } else if (isJournalFileName(name)) {
      try {
        const stat = await vscode.workspace.fs.stat(child);
        found.push({ path: below, size: stat.size, modified: stat.mtime });
      } catch {
        // Gone between the listing and the look at it.
      }
    }
  }
}

/** Notes of a workspace folder of any kind, virtual ones included, through the editor's own file system. */
export function workspaceNoteReader(folder: vscode.Uri): NoteReaderOfFolder {
  return {
    async list(shouldStop = () => false) {
      const found: NoteFile[] = [];
      await listBelow(folder, '', 0, found, shouldStop);
      return found;
    },
    async read(path) {
      try {
        const uri = noteUri(folder, path);
        const bytes = await vscode.workspace.fs.readFile(uri);
        return bytes.byteLength > largestNote ? undefined : decodeFile(path, bytes);
      } catch {
        return undefined;
      }
    },
  };
}

/**
 * Tells of what changes below `folder`: notes, and folders by name alone, which the editor tells of when they are
 * moved or deleted whole. Hidden files and installed packages are passed over.
 */
export function watchNotes(folder: vscode.WorkspaceFolder, onChange: (change: SourceChange) => void): Stop {
  const lookAgain = new Set<ReturnType<typeof setTimeout>>();
  const watcher = vscode.workspace.createFileSystemWatcher(new vscode.RelativePattern(folder, '**/*'));
  const told = (kind: SourceChange['kind'], uri: vscode.Uri) => {
    const path = notePath(folder.uri, uri);
    if (!path || path.split('/').slice(0, -1).some(isIgnoredFolder)) return;
    const name = path.slice(path.lastIndexOf('/') + 1);
    const mayBeFolder = !name.includes('.') && !isIgnoredFolder(name);
    if (isJournalFilePath(path) || mayBeFolder) onChange({ kind, path });
    if (kind === 'removed' || !mayBeFolder) return;
    // What is written into a new folder before it is watched itself is told of by nobody.
    const timer = setTimeout(() => {
      lookAgain.delete(timer);
      onChange({ kind, path });
    }, secondLook);
    lookAgain.add(timer);
  };
  watcher.onDidChange((uri) => {
    const path = notePath(folder.uri, uri);
    if (path && isJournalFilePath(path)) onChange({ kind: 'changed', path });
  });
  watcher.onDidCreate((uri) => told('changed', uri));
  watcher.onDidDelete((uri) => told('removed', uri));
  return {
    dispose() {
      for (const timer of lookAgain) clearTimeout(timer);
      watcher.dispose();
    },
  };
}
