import * as vscode from 'vscode';
import type { Journal } from '../journal/journal';
import { JournalCollection, type LoadOptions } from '../journal/journal-collection';
import type { JournalUpdate } from '../journal/journal-updates';
import type { NotePath } from '../journal/note';
import type { NoteSource } from '../journal/note-source';
import { addDays } from '../notation/time/iso-date';
import type { KeptNotesFile } from './kept-notes-file';
import type { JournalSettings, OpenJournal, OpenJournalChange } from './open-journal';
import { clockDate, machineZone, readSettings } from './settings';
import { type NoteReaderOfFolder, notePath, noteUri, watchNotes } from './workspace-note-source';

/** A journal below one workspace folder. */
class FolderJournal implements OpenJournal {
  readonly uri: vscode.Uri;
  readonly id: string;
  settings: JournalSettings;

  constructor(
    readonly folder: vscode.Uri,
    readonly journal: Journal,
  ) {
    this.uri = noteUri(folder, journal.root);
    this.id = this.uri.toString();
    this.settings = readSettings(this.uri);
  }

  get title(): string {
    const name = this.journal.plan.athlete?.name;
    return name ?? this.uri.path.slice(this.uri.path.lastIndexOf('/') + 1);
  }

  today() {
    return this.settings.today ?? clockDate(this.zone());
  }

  zone(): string {
    return this.journal.plan.zone ?? this.settings.timeZone ?? machineZone();
  }

  uriOf(note: NotePath): vscode.Uri {
    return noteUri(this.folder, note);
  }
}

/** Fewer notes are read faster than they are kept. */
const worthKeeping = 64;

/** Milliseconds after which notes are kept, when all that waited for them has been done. */
const untilKept = 3000;

/** This week's notes, and those that plan, come before years of day notes. */
function readsFirst(path: NotePath, around: ReadonlySet<string>): boolean {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return !/^\d{4}-/.test(name) || around.has(name.slice(0, 7));
}

/** The months, as names of notes begin, of the days around the day from which the folder is looked at. */
function monthsAroundToday(folder: vscode.Uri): ReadonlySet<string> {
  const today = readSettings(folder).today ?? clockDate('UTC');
  return new Set([-14, 0, 14].map((days) => addDays(today, days).slice(0, 7)));
}

/** The journals of one workspace folder: one collection, fed by the folder's files and the open documents. */
export class FolderJournals implements vscode.Disposable {
  readonly #collection: JournalCollection;
  readonly #journals = new Map<Journal, FolderJournal>();
  readonly #subscriptions: { dispose(): void }[] = [];
  readonly #onChange: (changes: readonly OpenJournalChange[]) => void;
  #disposed = false;
  #loads = 0;
  #keeping: ReturnType<typeof setTimeout> | undefined;

  constructor(
    readonly folder: vscode.WorkspaceFolder,
    reader: NoteReaderOfFolder,
    onChange: (changes: readonly OpenJournalChange[]) => void,
    private readonly log: vscode.LogOutputChannel,
    private readonly keptFile?: KeptNotesFile,
  ) {
    this.#onChange = onChange;
    const source: NoteSource = {
      list: (shouldStop) => reader.list(shouldStop),
      read: (path) => reader.read(path),
      onChange: (listener) => watchNotes(folder, listener),
    };
    this.#collection = new JournalCollection(source);
    this.#subscriptions.push(this.#collection.onChange((updates) => this.#tell(updates)));
    this.#subscriptions.push(this.#collection.watch((error) => log.error(String(error))));
    for (const document of vscode.workspace.textDocuments) this.documentChanged(document);
  }

  /**
   * Reads what is new on the disk; the first call reads everything, or takes it as an earlier session read it. Resolves
   * at the latest when all is read.
   */
  async load(onFirstRead?: () => void): Promise<void> {
    this.#loads += 1;
    const kept = this.#loads === 1 ? this.keptFile?.read() : undefined;
    await this.#load({ ...(kept ? { kept } : {}), ...(onFirstRead ? { onFirstRead } : {}) });
  }

  /** Reads everything on the disk again, whether it looks the same or not, and throws away what was kept of it. */
  async readAgain(): Promise<void> {
    clearTimeout(this.#keeping);
    await this.keptFile?.forget();
    await this.#load({ again: true });
  }

  async #load(options: Pick<LoadOptions, 'kept' | 'again' | 'onFirstRead'>): Promise<void> {
    const around = monthsAroundToday(this.folder.uri);
    const begin = performance.now();
    const listedAt = Date.now();
    const before = this.#collection.counts.read;
    await this.#collection.load({
      ...options,
      shouldStop: () => this.#disposed,
      first: (path) => readsFirst(path, around),
    });
    const read = this.#collection.counts.read - before;
    const taken = options.kept ? this.#collection.takenFromKept : 0;
    const milliseconds = Math.round(performance.now() - begin);
    this.log.info(`${this.folder.name}: ${read} notes read, ${taken} kept from before, ${milliseconds} ms.`);
    const gone = ((await options.kept)?.size ?? 0) - taken;
    if (read + gone >= worthKeeping && !this.#disposed) this.#keepSoon(listedAt);
  }

  #keepSoon(listedAt: number): void {
    clearTimeout(this.#keeping);
    this.#keeping = setTimeout(() => {
      this.keptFile?.write(this.#collection.readFiles(), listedAt).catch((error: unknown) => {
        this.log.warn(`${this.folder.name}: its notes cannot be kept for the next start. ${String(error)}`);
      });
    }, untilKept);
  }

  all(): readonly OpenJournal[] {
    return this.#collection.journals().flatMap((journal) => this.#journals.get(journal) ?? []);
  }

  /** The journal that `uri` lies in, and the path of its note. */
  find(uri: vscode.Uri): { readonly journal: OpenJournal; readonly path: NotePath } | undefined {
    const path = notePath(this.folder.uri, uri);
    const journal = path === undefined ? undefined : this.#collection.journalOf(path);
    const open = journal && this.#journals.get(journal);
    return open && path !== undefined ? { journal: open, path } : undefined;
  }

  /** Takes in the text of an open document of this folder. */
  documentChanged(document: vscode.TextDocument): void {
    const path = document.isClosed ? undefined : notePath(this.folder.uri, document.uri);
    if (path !== undefined) this.#collection.setOpenText(path, document.getText());
  }

  documentClosed(document: vscode.TextDocument): void {
    const path = notePath(this.folder.uri, document.uri);
    if (path !== undefined) void this.#collection.closeText(path);
  }

  /** Forgets a file or folder before the file system tells of it. */
  removed(uri: vscode.Uri): void {
    const path = notePath(this.folder.uri, uri);
    if (path) this.#collection.removeBelow(path);
  }

  settingsChanged(): void {
    const journals = [...this.#journals.values()];
    for (const journal of journals) journal.settings = readSettings(journal.uri);
    this.#onChange(
      journals.map((journal) => ({
        journal,
        kind: 'changed',
        notes: new Set(),
        days: new Set(),
        everything: true,
      })),
    );
  }

  dispose(): void {
    this.#disposed = true;
    clearTimeout(this.#keeping);
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #tell(updates: readonly JournalUpdate[]): void {
    const changes = updates.map(({ journal, kind, notes, change }): OpenJournalChange => {
      const open = this.#journals.get(journal) ?? new FolderJournal(this.folder.uri, journal);
      if (kind === 'removed') this.#journals.delete(journal);
      else this.#journals.set(journal, open);
      return { journal: open, kind, notes, days: change.days, everything: change.plan };
    });
    this.#onChange(changes);
  }
}
