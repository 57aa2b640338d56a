import { openJournalFile } from './calendar-file';
import type { Journal } from './journal';
import { JournalFolders } from './journal-folders';
import { JournalIndex } from './journal-index';
import { GatheredUpdates, type JournalUpdate } from './journal-updates';
import type { KeptNotes, ReadFile } from './kept/kept-notes';
import { isUnsaved, type KnownNote, type NoteVersion, versionOf } from './known-note';
import type { NotePath } from './note';
import { comparePaths, isBelow, isJournalFilePath, isNotePath } from './note-path';
import type { NoteFile, NoteSource, SourceChange, Stop } from './note-source';
import { openNoteForLater } from './open-note';
import { WorkSlices } from './work-slices';

/** How many notes are asked of the source at once; a remote one takes its time with each. */
const readsAtOnce = 16;

/** How a source is to be read. */
export interface LoadOptions {
  readonly shouldStop?: () => boolean;
  /** Notes to read before all others, such as this week's and those that plan. */
  readonly first?: (path: NotePath) => boolean;
  /** Called when the first ones have been read and told of. */
  readonly onFirstRead?: () => void;
  /** Notes of an earlier session, taken in place of reading files that are still the same. */
  readonly kept?: Promise<KeptNotes | undefined>;
  /** Whether files that look the same as when they were read are read again as well. */
  readonly again?: boolean;
  /** Called between slices with the number of notes read and to read. */
  readonly onProgress?: (read: number, total: number) => void;
}

/** All journals of one source, kept up to date by what the source and open documents tell. */
export class JournalCollection {
  readonly #source: NoteSource;
  readonly #known = new Map<NotePath, KnownNote>();
  readonly #folders = new JournalFolders();
  #foldersChanged = false;
  readonly #journals = new Map<NotePath, JournalIndex>();
  /** Paths whose text on the disk is to be asked for, once they belong to a journal. */
  readonly #unread = new Set<NotePath>();
  readonly #running = new Set<Promise<boolean>>();
  /** For each list that is being made, what was removed meanwhile. */
  readonly #removedMeanwhile = new Set<NotePath[]>();
  readonly #updates = new GatheredUpdates();
  readonly #listeners = new Set<(updates: readonly JournalUpdate[]) => void>();
  /** How often anything was heard of any path: a path that went and came back is not taken for the old one. */
  #heard = 0;
  #notesRead = 0;
  #notesParsed = 0;
  #notesKept = 0;

  constructor(source: NoteSource) {
    this.#source = source;
  }

  /** How often the source was asked for a text, and one was read as a note or a calendar. */
  get counts(): { readonly read: number; readonly parsed: number } {
    return { read: this.#notesRead, parsed: this.#notesParsed };
  }

  /** How often a kept note was taken in place of reading its file. */
  get takenFromKept(): number {
    return this.#notesKept;
  }

  /** The notes as they were read from files that the source listed and of which no change was told since. */
  *readFiles(): Iterable<ReadFile> {
    for (const { stored, file, disk } of this.#known.values()) {
      if (stored && file && disk?.file && 'reading' in disk.file) yield { file, note: disk.file };
    }
  }

  /** Every journal, in order of its folder. */
  journals(): readonly Journal[] {
    return [...this.#journals.values()].sort((a, b) => comparePaths(a.root, b.root));
  }

  /** The journal to which the note at `path` belongs, or would belong if there were one. */
  journalOf(path: NotePath): Journal | undefined {
    return this.#indexOf(path);
  }

  /** Tells `listener` of every change: once an operation, or once a slice of reading. */
  onChange(listener: (updates: readonly JournalUpdate[]) => void): Stop {
    this.#listeners.add(listener);
    return { dispose: () => this.#listeners.delete(listener) };
  }

  /** Follows what the source tells, until the returned value is disposed of. */
  watch(onError: (error: unknown) => void): Stop {
    return this.#source.onChange((change) => void this.apply(change).catch(onError));
  }

  /**
   * Lists the source and reads what is new or changed since it was last listed; what it no longer lists is taken
   * out. Gives way between slices. Rejects when the source cannot be listed.
   *
   * @returns whether all was read; after a stop the next call goes on
   */
  async load(options: LoadOptions = {}): Promise<boolean> {
    const heard = new Map([...this.#known].map(([path, known]) => [path, known.heard]));
    const removed: NotePath[] = [];
    this.#removedMeanwhile.add(removed);
    const listing = this.#source.list(options.shouldStop).finally(() => {
      this.#removedMeanwhile.delete(removed);
    });
    const [files, kept] = await Promise.all([listing, options.kept]);
    if (options.shouldStop?.()) return false;
    const listed = new Set<NotePath>();
    for (const file of files) {
      if (!isJournalFilePath(file.path) || removed.some((path) => isAtOrBelow(file.path, path))) continue;
      listed.add(file.path);
      const known = this.#know(file.path);
      if (!options.again && known.stored && isSameFile(known.file, file)) continue;
      // Of what was read before, or told of as changed, the source is asked.
      known.kept = known.stored ? undefined : kept?.noteOf(file);
      known.stored = true;
      known.file = file;
      this.#unread.add(file.path);
    }
    for (const known of [...this.#known.values()]) {
      // What was told while the list was made is newer than the list.
      const isNews = heard.get(known.path) !== known.heard;
      if (known.stored && !listed.has(known.path) && !isNews) this.#forgetStored(known);
    }
    this.#assignJournals();
    this.#tell();
    return this.#follow(this.#readUnread(options));
  }

  /** Takes in a change that the source told of, asking for the text. A folder stands for all below it. */
  async apply(change: SourceChange): Promise<void> {
    if (change.kind === 'removed') {
      this.#removeAtOrBelow(change.path);
    } else if (isJournalFilePath(change.path)) {
      await this.#readAgain(change.path);
    } else {
      await this.load();
    }
    await this.settled();
  }

  /** Takes in the text on the disk at `path`; `undefined` when there is none any more. */
  update(path: NotePath, text: string | undefined): void {
    if (text === undefined) {
      this.#removeAtOrBelow(path);
    } else if (isJournalFilePath(path)) {
      const known = this.#know(path);
      known.stored = true;
      known.file = undefined;
      known.kept = undefined;
      known.heard = this.#nextHeard();
      this.#unread.delete(path);
      this.#setDisk(known, { text });
      this.#finish();
    }
  }

  /** Takes out everything below `folder`. */
  removeBelow(folder: NotePath): void {
    this.#removeAtOrBelow(folder);
  }

  /** Lets the text of an open document win over the disk, until {@link closeText}. */
  setOpenText(path: NotePath, text: string): void {
    if (!isJournalFilePath(path)) return;
    const known = this.#know(path);
    if (known.open?.text === text) return;
    known.open = known.disk?.text === text ? known.disk : { text };
    this.#place(known);
    this.#finish();
  }

  /** Goes back to the text on the disk, which is asked for again: it may have been written last of all. */
  async closeText(path: NotePath): Promise<void> {
    const known = this.#known.get(path);
    if (!known?.open) return;
    known.open = undefined;
    known.kept = undefined;
    if (known.stored) this.#unread.add(path);
    else this.#forget(known);
    this.#place(known);
    this.#finish();
    await this.settled();
  }

  /** Resolves when nothing is being read any more. */
  async settled(): Promise<void> {
    while (this.#running.size > 0) await Promise.allSettled(this.#running);
  }

  #nextHeard(): number {
    this.#heard += 1;
    return this.#heard;
  }

  #know(path: NotePath): KnownNote {
    let known = this.#known.get(path);
    if (!known) {
      known = { path, stored: false, heard: this.#nextHeard() };
      this.#known.set(path, known);
      // A calendar makes no journal, whatever its name begins with.
      if (isNotePath(path) && this.#folders.add(path)) this.#foldersChanged = true;
    }
    return known;
  }

  #forget(known: KnownNote): void {
    this.#known.delete(known.path);
    this.#unread.delete(known.path);
    if (isNotePath(known.path) && this.#folders.remove(known.path)) this.#foldersChanged = true;
  }

  /** The source holds the note no longer. Unsaved text stays; a document that only showed the file does not. */
  #forgetStored(known: KnownNote): void {
    if (!isUnsaved(known)) known.open = undefined;
    known.stored = false;
    known.file = undefined;
    known.kept = undefined;
    known.disk = undefined;
    known.heard = this.#nextHeard();
    this.#unread.delete(known.path);
    if (!known.open) this.#forget(known);
    this.#place(known);
  }

  #removeAtOrBelow(path: NotePath): void {
    for (const removed of this.#removedMeanwhile) removed.push(path);
    const single = this.#known.get(path);
    // A note has nothing below it, so the look through all paths is left to folders.
    const gone = single ? [single] : [...this.#known.values()].filter((known) => isBelow(known.path, path));
    for (const known of gone) this.#forgetStored(known);
    this.#finish();
  }

  #setDisk(known: KnownNote, version: NoteVersion | undefined): void {
    if (!version) known.disk = undefined;
    else if (!known.disk || known.disk.text !== version.text)
      known.disk = known.open && known.open.text === version.text ? known.open : version;
    this.#place(known);
  }

  #indexOf(path: NotePath): JournalIndex | undefined {
    const folder = this.#folders.around(path);
    return folder === undefined ? undefined : this.#journals.get(folder);
  }

  /** Puts the note's text, as it counts now, into the index of its journal and out of any other. */
  #place(known: KnownNote): void {
    const version = known.open ?? known.disk;
    const journal = version && this.#known.has(known.path) ? this.#indexOf(known.path) : undefined;
    if (known.journal && known.journal !== journal) {
      this.#updates.changed(known.journal, known.path, known.journal.remove(known.path));
    }
    known.journal = journal;
    if (!version || !journal) return;
    const standing = journal.file(known.path);
    if (standing && (standing === version.file || standing.text === version.text)) return;
    if (!version.file) {
      version.file = openJournalFile(known.path, version.text);
      this.#notesParsed += 1;
    }
    this.#updates.changed(journal, known.path, journal.replace(version.file));
  }

  /** Makes journals of the folders that are ones now, and puts every note where it belongs. */
  #assignJournals(): void {
    if (!this.#foldersChanged) return;
    this.#foldersChanged = false;
    const folders = new Set(this.#folders.all());
    for (const folder of folders) {
      if (this.#journals.has(folder)) continue;
      const journal = new JournalIndex(folder);
      this.#journals.set(folder, journal);
      this.#updates.added(journal);
    }
    const gone = [...this.#journals].filter(([folder]) => !folders.has(folder));
    for (const [folder] of gone) this.#journals.delete(folder);
    for (const known of this.#known.values()) this.#place(known);
    for (const [, journal] of gone) this.#updates.removed(journal);
  }

  async #readAgain(path: NotePath): Promise<void> {
    const known = this.#know(path);
    known.stored = true;
    known.file = undefined;
    known.kept = undefined;
    this.#unread.add(path);
    this.#assignJournals();
    await this.#follow(this.#readUnread({}));
  }

  /** Unread notes that belong to a journal; all others stay unread until one forms around them. */
  #due(first: LoadOptions['first']): readonly (readonly NotePath[])[] {
    const due = [...this.#unread].filter((path) => this.#indexOf(path) !== undefined);
    if (!first) return [due];
    const rest: NotePath[] = [];
    const early = due.filter((path) => first(path) || !rest.push(path));
    return [early, rest];
  }

  async #readUnread(options: LoadOptions): Promise<boolean> {
    const slices = new WorkSlices();
    const isLater = (path: NotePath) => options.first !== undefined && !options.first(path);
    let read = 0;
    let isFirst = true;
    for (
      let due = this.#due(options.first);
      due.some((paths) => paths.length > 0);
      due = this.#due(undefined)
    ) {
      const total = read + due.flat().length;
      for (const paths of due) {
        for (let start = 0; start < paths.length; start += readsAtOnce) {
          if (options.shouldStop?.()) return false;
          const batch = paths.slice(start, start + readsAtOnce).filter((path) => this.#unread.delete(path));
          for (const take of await Promise.all(batch.map((path) => this.#ask(path, isLater(path))))) {
            take();
            read += 1;
            if (!(await slices.pauseWhenDue())) continue;
            this.#tell();
            options.onProgress?.(read, total);
          }
        }
        this.#tell();
        if (isFirst) options.onFirstRead?.();
        isFirst = false;
      }
      options.onProgress?.(read, total);
    }
    return true;
  }

  /**
   * Asks for a note's text, or takes the note that was kept.
   * @param isLater whether it is one of many of which nothing is asked now
   * @returns what takes the answer in, unless something newer was heard meanwhile
   */
  #ask(path: NotePath, isLater: boolean): (() => void) | Promise<() => void> {
    const known = this.#known.get(path);
    if (!known) return () => {};
    known.heard = this.#nextHeard();
    const asked = known.heard;
    const { kept } = known;
    if (!kept) return this.#askSource(known, asked, isLater);
    known.kept = undefined;
    return () => {
      if (known.heard !== asked) return;
      this.#notesKept += 1;
      this.#setDisk(known, versionOf(kept));
    };
  }

  async #askSource(known: KnownNote, asked: number, isLater: boolean): Promise<() => void> {
    this.#notesRead += 1;
    const text = await this.#source.read(known.path).catch(() => undefined);
    return () => {
      if (known.heard !== asked) return;
      // What could not be read is asked for again the next time, even when its file looks the same then.
      if (text === undefined) known.file = undefined;
      this.#setDisk(known, text === undefined ? undefined : this.#versionFor(known, text, isLater));
    };
  }

  #versionFor({ path, disk, open }: KnownNote, text: string, isLater: boolean): NoteVersion {
    if (!isLater || !isNotePath(path) || disk?.text === text || open) return { text };
    this.#notesParsed += 1;
    return { text, file: openNoteForLater(path, text) };
  }

  #finish(): void {
    this.#assignJournals();
    this.#tell();
    if (this.#unread.size > 0) void this.#follow(this.#readUnread({}));
  }

  #tell(): void {
    const updates = this.#updates.take();
    if (updates.length === 0) return;
    for (const listener of [...this.#listeners]) listener(updates);
  }

  #follow(work: Promise<boolean>): Promise<boolean> {
    this.#running.add(work);
    return work.finally(() => this.#running.delete(work));
  }
}

function isAtOrBelow(path: NotePath, folder: NotePath): boolean {
  return path === folder || isBelow(path, folder);
}

function isSameFile(one: NoteFile | undefined, other: NoteFile): boolean {
  return one?.size === other.size && one.modified === other.modified;
}
