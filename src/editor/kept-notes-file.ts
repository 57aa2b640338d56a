import * as vscode from 'vscode';
import { crc32 } from '../journal/kept/crc32';
import {
  decodeKeptNotes,
  encodeKeptNotes,
  type KeptFrom,
  type KeptNotes,
  type ReadFile,
} from '../journal/kept/kept-notes';

/** Where the notes of one workspace folder are kept for the next session: a file in the editor's own storage. */
export class KeptNotesFile {
  readonly #storage: vscode.Uri;
  readonly #file: vscode.Uri;
  readonly #from: KeptFrom;

  /**
   * @param storage the folder that the editor gives the extension for this workspace
   * @param reader other for each version of what reads notes
   */
  constructor(storage: vscode.Uri, folder: vscode.Uri, reader: string) {
    this.#from = { reader, folder: folder.toString() };
    this.#storage = storage;
    const name = crc32(new TextEncoder().encode(this.#from.folder)).toString(16).padStart(8, '0');
    this.#file = vscode.Uri.joinPath(storage, `${name}.notes`);
  }

  /** What the last session left; `undefined` when that is nothing, damaged, or another version's. */
  async read(): Promise<KeptNotes | undefined> {
    try {
      return await decodeKeptNotes(await vscode.workspace.fs.readFile(this.#file), this.#from);
    } catch {
      return undefined;
    }
  }

  /**
   * Leaves notes for the next session, in place of what was there.
   * @param listedAt when their folder was listed, milliseconds since 1970
   */
  async write(notes: Iterable<ReadFile>, listedAt: number): Promise<void> {
    const bytes = await encodeKeptNotes(notes, this.#from, listedAt);
    await vscode.workspace.fs.createDirectory(this.#storage);
    const draft = this.#file.with({ path: `${this.#file.path}.new` });
    await vscode.workspace.fs.writeFile(draft, bytes);
    await vscode.workspace.fs.rename(draft, this.#file, { overwrite: true });
  }

  /** Throws away what is kept. */
  async forget(): Promise<void> {
    try {
      await vscode.workspace.fs.delete(this.#file);
    } catch {
      // Nothing is kept.
    }
  }
}
