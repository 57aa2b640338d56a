// What the tests inside the editor start from: a journal in a folder of its own, and patience. Works in both hosts.
import * as vscode from 'vscode';

/** How often and how long it is asked again before a wish counts as not fulfilled. */
const tries = 400;
const pause = 50;

/**
 * Asks again and again until the answer is not `undefined`.
 * @param what named in the error when there is none after 20 s
 * @param ask may resolve to anything else than `undefined`
 */
export async function eventually<Answer>(
  what: string,
  ask: () => Promise<Answer | undefined> | Answer | undefined,
): Promise<Answer> {
  for (let attempt = 0; attempt < tries; attempt += 1) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
  throw new Error(`There was no ${what}.`);
}

/** A journal in a folder of its own below the workspace folder. */
export interface ScratchJournal {
  readonly folder: vscode.Uri;
  /** Address of a file, from its path with slashes. */
  uri(path: string): vscode.Uri;
  /** Writes a file through the file system, as another program would. */
  write(path: string, text: string | Uint8Array): Promise<void>;
  /** What is on the disk, a byte order mark included. */
  read(path: string): Promise<string>;
  exists(path: string): Promise<boolean>;
  /** Opens a note in an editor with the cursor at the first character of `words`. */
  show(path: string, words?: string): Promise<vscode.TextEditor>;
  /** Closes all editors, throwing away what is unsaved, and removes the folder. */
  remove(): Promise<void>;
}

async function closeAllEditors(): Promise<void> {
  for (const document of vscode.workspace.textDocuments) {
    if (!document.isDirty) continue;
    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('workbench.action.files.revert');
  }
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}

/** The workspace folder of the run. */
export function workspaceRoot(): vscode.Uri {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (!folder) throw new Error('The tests need an open folder.');
  return folder.uri;
}

/**
 * Writes notes into a new folder `name` below the workspace folder.
 * @param notes the text of each note by its path, with slashes
 */
export async function scratchJournal(
  name: string,
  notes: Readonly<Record<string, string | Uint8Array>>,
): Promise<ScratchJournal> {
  const folder = vscode.Uri.joinPath(workspaceRoot(), name);
  const uri = (path: string) => vscode.Uri.joinPath(folder, ...path.split('/'));
  const write = async (path: string, text: string | Uint8Array) =>
    vscode.workspace.fs.writeFile(
      uri(path),
      typeof text === 'string' ? new TextEncoder().encode(text) : text,
    );
  for (const [path, text] of Object.entries(notes)) await write(path, text);
  return {
    folder,
    uri,
    write,
    read: async (path) =>
      new TextDecoder('utf-8', { ignoreBOM: true }).decode(await vscode.workspace.fs.readFile(uri(path))),
    exists: async (path) =>
      vscode.workspace.fs.stat(uri(path)).then(
        () => true,
        () => false,
      ),
    show: async (path, words = '') => {
      const document = await vscode.workspace.openTextDocument(uri(path));
      const editor = await vscode.window.showTextDocument(document);
      const offset = document.getText().indexOf(words);
      if (offset < 0) throw new Error(`${words} does not stand in ${path}.`);
      const position = document.positionAt(offset);
      editor.selection = new vscode.Selection(position, position);
      return editor;
    },
    remove: async () => {
      await closeAllEditors();
      await vscode.workspace.fs.delete(folder, { recursive: true });
    },
  };
}

/** The code of a finding, as a word. */
export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

/** The findings that the editor shows in a note now. */
export function findingsIn(note: vscode.Uri): readonly vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(note).filter(({ source }) => source === 'training');
}

/** The codes of the findings that the editor shows in a note now, sorted. */
export function codesIn(note: vscode.Uri): readonly string[] {
  return findingsIn(note).map(codeOf).sort();
}

/** Waits until one of the note's findings is as wished. */
export async function findingIn(
  note: vscode.Uri,
  code: string,
  message: RegExp = /./,
): Promise<vscode.Diagnostic> {
  const name = note.path.slice(note.path.lastIndexOf('/') + 1);
  try {
    return await eventually(`${code} ${message} in ${name}`, () =>
      findingsIn(note).find((one) => codeOf(one) === code && message.test(one.message)),
    );
  } catch (error) {
    const shown = findingsIn(note).map((one) => `${codeOf(one)}: ${one.message}`);
    throw new Error(`${String(error)} There are: ${shown.join('\n') || 'none'}`);
  }
}

/** Waits until none of the note's findings has the code. */
export async function noFindingIn(note: vscode.Uri, code: string): Promise<void> {
  await eventually(`end of ${code} in ${note.path}`, () => !codesIn(note).includes(code) || undefined);
}
