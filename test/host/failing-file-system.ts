import * as vscode from 'vscode';

/** A file system in memory in which some files cannot be written, and which tells nobody of what happens to them. */
export class FailingFileSystem implements vscode.FileSystemProvider {
  readonly #files = new Map<string, { readonly bytes: Uint8Array; readonly time: number }>();
  readonly #changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  /** Names of files that cannot be written now. */
  readonly locked = new Set<string>();
  #clock = 1_000;

  readonly onDidChangeFile = this.#changed.event;

  constructor(readonly scheme: string) {}

  uri(name: string): vscode.Uri {
    return vscode.Uri.from({ scheme: this.scheme, path: `/${name}` });
  }

  /** Writes a file as another program does, of which the editor has not heard yet. */
  put(name: string, text: string): void {
    this.#clock += 1_000;
    this.#files.set(`/${name}`, { bytes: new TextEncoder().encode(text), time: this.#clock });
  }

  /** What is in a file; `undefined` when there is none. */
  text(name: string): string | undefined {
    const file = this.#files.get(`/${name}`);
    return file && new TextDecoder().decode(file.bytes);
  }

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }

  stat({ path }: vscode.Uri): vscode.FileStat {
    if (path === '/') return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
    const file = this.#files.get(path);
    if (!file) throw vscode.FileSystemError.FileNotFound(path);
    return { type: vscode.FileType.File, ctime: 0, mtime: file.time, size: file.bytes.length };
  }

  readDirectory(): [string, vscode.FileType][] {
    return [...this.#files.keys()].map((path) => [path.slice(1), vscode.FileType.File]);
  }

  createDirectory(): void {}

  readFile({ path }: vscode.Uri): Uint8Array {
    const file = this.#files.get(path);
    if (!file) throw vscode.FileSystemError.FileNotFound(path);
    return file.bytes;
  }

  writeFile({ path }: vscode.Uri, bytes: Uint8Array): void {
    if (this.locked.has(path.slice(1))) throw vscode.FileSystemError.NoPermissions(path);
    this.#clock += 1_000;
    this.#files.set(path, { bytes, time: this.#clock });
  }

  delete({ path }: vscode.Uri): void {
    if (this.locked.has(path.slice(1))) throw vscode.FileSystemError.NoPermissions(path);
    this.#files.delete(path);
  }

  rename(): void {
    throw vscode.FileSystemError.NoPermissions();
  }
}
