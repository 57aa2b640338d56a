import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { decodeFile, largestNote } from '../decode-note';
import type { NotePath } from '../note';
import { isIgnoredFolder, isJournalFileName, joinPath } from '../note-path';
import type { NoteFile, NoteSource, SourceChange, Stop } from '../note-source';
import { WorkSlices } from '../work-slices';

/** What is found under a name in a folder. A link is one of the two only once it has been followed. */
export interface DiskEntry {
  readonly name: string;
  readonly isFolder: boolean;
  readonly isLink: boolean;
}

/** The few calls to the disk that notes need; each throws where the disk refuses. */
export interface DiskCalls {
  entries(folder: string): readonly DiskEntry[];
  /** What `path` leads to, links followed. */
  status(path: string): {
    readonly isFile: boolean;
    readonly isFolder: boolean;
    readonly size: number;
    readonly modified: number;
  };
  /** The path without any link in it. */
  realPath(path: string): string;
  bytes(path: string): Uint8Array;
}

const nodeDisk: DiskCalls = {
  entries: (folder) =>
    readdirSync(folder, { withFileTypes: true }).map((entry) => ({
      name: entry.name,
      isFolder: entry.isDirectory(),
      isLink: entry.isSymbolicLink(),
    })),
  status: (path) => {
    const status = statSync(path);
    return {
      isFile: status.isFile(),
      isFolder: status.isDirectory(),
      size: status.size,
      modified: status.mtimeMs,
    };
  },
  realPath: (path) => realpathSync(path),
  bytes: (path) => readFileSync(path),
};

/** The value of `ask`, or `undefined` where the disk refuses it. */
function unlessRefused<Value>(ask: () => Value): Value | undefined {
  try {
    return ask();
  } catch {
    return undefined;
  }
}

/**
 * Notes in a folder of this machine. Each read is synchronous, which is many times faster over thousands of small
 * files than waiting for each; listing gives way between slices. It does not watch the disk: whoever does tells it.
 */
export class DiskNoteSource implements NoteSource {
  readonly #folder: string;
  readonly #disk: DiskCalls;
  readonly #listeners = new Set<(change: SourceChange) => void>();

  /** @param folder path on this machine; one that does not exist holds no notes */
  constructor(folder: string, disk: DiskCalls = nodeDisk) {
    this.#folder = folder;
    this.#disk = disk;
  }

  async list(shouldStop?: () => boolean): Promise<readonly NoteFile[]> {
    const files: NoteFile[] = [];
    const slices = new WorkSlices();
    const visited = new Set<string>();
    const folders: NotePath[] = [''];
    // Linked folders come last, so that a folder reached both ways keeps its own path.
    const linked: NotePath[] = [];
    for (let folder = folders.pop(); folder !== undefined; folder = folders.pop() ?? linked.pop()) {
      if (shouldStop?.()) break;
      const path = this.#pathOf(folder);
      const realPath = unlessRefused(() => this.#disk.realPath(path));
      if (realPath === undefined || visited.has(realPath)) continue;
      visited.add(realPath);
      for (const entry of unlessRefused(() => this.#disk.entries(path)) ?? []) {
        await slices.pauseWhenDue();
        const below = joinPath(folder, entry.name);
        const isFile = isJournalFileName(entry.name);
        if (entry.isFolder) {
          if (!isIgnoredFolder(entry.name)) folders.push(below);
        } else if (isFile || entry.isLink) {
          const status = unlessRefused(() => this.#disk.status(this.#pathOf(below)));
          if (status?.isFolder && !isIgnoredFolder(entry.name)) linked.push(below);
          if (status?.isFile && isFile && status.size <= largestNote) {
            files.push({ path: below, size: status.size, modified: status.modified });
          }
        }
      }
    }
    return files;
  }

  async read(path: NotePath): Promise<string | undefined> {
    return unlessRefused(() => {
      const full = this.#pathOf(path);
      const status = this.#disk.status(full);
      // A pipe or a device would never answer.
      if (!status.isFile || status.size > largestNote) return undefined;
      return decodeFile(path, this.#disk.bytes(full));
    });
  }

  onChange(listener: (change: SourceChange) => void): Stop {
    this.#listeners.add(listener);
    return { dispose: () => this.#listeners.delete(listener) };
  }

  /** Passes on what the machine's own watcher, or an editor's, has seen. */
  tell(change: SourceChange): void {
    for (const listener of [...this.#listeners]) listener(change);
  }

  #pathOf(path: NotePath): string {
    return path === '' ? this.#folder : join(this.#folder, path);
  }
}
