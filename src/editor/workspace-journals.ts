import * as vscode from 'vscode';
import type { NotePath } from '../journal/note';
import { FolderJournals } from './folder-journals';
import type { KeptNotesFile } from './kept-notes-file';
import type { OpenJournal, OpenJournalChange, OpenJournals } from './open-journal';
import { section } from './settings';
import type { NoteReaderOfFolder } from './workspace-note-source';

/** How long changes are gathered before features are told, so that a burst of events is one change. */
const gatheringTime = 60;

function isNoteDocument(document: vscode.TextDocument): boolean {
  return document.languageId === 'markdown' || /\.md$/i.test(document.uri.path);
}

/** A note, or a calendar whose busy times count as soon as they are typed. */
function isJournalDocument(document: vscode.TextDocument): boolean {
  return isNoteDocument(document) || /\.ics$/i.test(document.uri.path);
}

/** What two changes of one journal are together. */
function merged(one: OpenJournalChange | undefined, other: OpenJournalChange): OpenJournalChange {
  if (!one || other.kind === 'removed') return other;
  return {
    journal: other.journal,
    kind: one.kind === 'added' ? 'added' : other.kind,
    notes: new Set([...one.notes, ...other.notes]),
    days: new Set([...one.days, ...other.days]),
    everything: one.everything || other.everything,
  };
}

/** All journals of the workspace: one {@link FolderJournals} a workspace folder, unsaved text before the disk. */
export class WorkspaceJournals implements OpenJournals, vscode.Disposable {
  readonly ready: Promise<void>;
  readonly #folders = new Map<string, FolderJournals>();
  readonly #changed = new vscode.EventEmitter<readonly OpenJournalChange[]>();
  readonly #gathered = new Map<OpenJournal, OpenJournalChange>();
  readonly #subscriptions: vscode.Disposable[] = [this.#changed];
  /** Folders whose first notes are still being read. */
  #reading = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly onDidChange = this.#changed.event;

  /**
   * @param readerFor Lists and reads the notes of a workspace folder in the fastest way that the host allows.
   * @param keptFor Where the notes of a folder are kept for the next session, if anywhere.
   */
  constructor(
    private readonly readerFor: (folder: vscode.WorkspaceFolder) => NoteReaderOfFolder,
    private readonly log: vscode.LogOutputChannel,
    private readonly keptFor: (folder: vscode.WorkspaceFolder) => KeptNotesFile | undefined = () => undefined,
  ) {
    this.#subscriptions.push(
      vscode.workspace.onDidChangeWorkspaceFolders((change) => {
        for (const folder of change.removed) this.#close(folder);
        for (const folder of change.added) void this.#open(folder);
      }),
      vscode.workspace.onDidOpenTextDocument((document) => this.#documentChanged(document)),
      vscode.workspace.onDidChangeTextDocument((change) => {
        if (change.contentChanges.length > 0) this.#documentChanged(change.document);
      }),
      vscode.workspace.onDidCloseTextDocument((document) =>
        this.#folderOf(document.uri)?.documentClosed(document),
      ),
      vscode.workspace.onDidDeleteFiles(({ files }) => {
        for (const uri of files) this.#folderOf(uri)?.removed(uri);
      }),
      vscode.workspace.onDidRenameFiles(({ files }) => {
        for (const { oldUri } of files) this.#folderOf(oldUri)?.removed(oldUri);
        this.#lookAgain();
      }),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration(section))
          for (const one of this.#folders.values()) one.settingsChanged();
      }),
    );
    const folders = vscode.workspace.workspaceFolders ?? [];
    this.ready = Promise.all(folders.map((folder) => this.#open(folder))).then(() => undefined);
  }

  all(): readonly OpenJournal[] {
    if (this.#reading > 0) return [];
    return [...this.#folders.values()].flatMap((folder) => folder.all());
  }

  byId(id: string): OpenJournal | undefined {
    return this.all().find((journal) => journal.id === id);
  }

  find(uri: vscode.Uri) {
    const found = this.#folderOf(uri)?.find(uri);
    if (!found) return undefined;
    const note = found.journal.journal.note(found.path);
    return note ? { ...found, note } : found;
  }

  noteOf(document: vscode.TextDocument) {
    if (!isNoteDocument(document)) return undefined;
    this.#documentChanged(document);
    const found = this.find(document.uri);
    return found && 'note' in found ? { journal: found.journal, note: found.note } : undefined;
  }

  /** Reads every note again: for what no event told of, and what looks the same and is not. */
  async refresh(): Promise<void> {
    await Promise.all([...this.#folders.values()].map((folder) => folder.readAgain()));
  }

  /**
   * Tells features of the changes gathered so far, but not before the notes that plan and those of these weeks have
   * been read: half a journal has no goals, and would be full of findings.
   */
  flush(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#reading > 0) return;
    const changes = [...this.#gathered.values()];
    this.#gathered.clear();
    if (changes.length > 0) this.#changed.fire(changes);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    for (const folder of this.#folders.values()) folder.dispose();
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  /** Looks through every folder again for what is new there. */
  #lookAgain(): void {
    for (const folder of this.#folders.values())
      folder.load().catch((error: unknown) => this.log.error(String(error)));
  }

  #documentChanged(document: vscode.TextDocument): void {
    if (isJournalDocument(document)) this.#folderOf(document.uri)?.documentChanged(document);
  }

  #folderOf(uri: vscode.Uri): FolderJournals | undefined {
    const folder = vscode.workspace.getWorkspaceFolder(uri);
    return folder && this.#folders.get(folder.uri.toString());
  }

  async #open(folder: vscode.WorkspaceFolder): Promise<void> {
    const journals = new FolderJournals(
      folder,
      this.readerFor(folder),
      (changes) => this.#gather(changes),
      this.log,
      this.keptFor(folder),
    );
    this.#folders.set(folder.uri.toString(), journals);
    this.#reading += 1;
    const firstRead = () => {
      if (isFirst) this.#reading -= 1;
      isFirst = false;
      this.flush();
    };
    let isFirst = true;
    try {
      await journals.load(firstRead);
    } catch (error) {
      this.log.error(`${folder.name} cannot be read: ${String(error)}`);
    }
    firstRead();
  }

  #close(folder: vscode.WorkspaceFolder): void {
    const journals = this.#folders.get(folder.uri.toString());
    if (!journals) return;
    this.#folders.delete(folder.uri.toString());
    const nothing = { notes: new Set<NotePath>(), days: new Set<number>() };
    const gone = journals
      .all()
      .map((journal) => ({ journal, kind: 'removed' as const, ...nothing, everything: true }));
    journals.dispose();
    this.#gather(gone);
    this.flush();
  }

  #gather(changes: readonly OpenJournalChange[]): void {
    for (const change of changes)
      this.#gathered.set(change.journal, merged(this.#gathered.get(change.journal), change));
    if (this.#timer === undefined) this.#timer = setTimeout(() => this.flush(), gatheringTime);
  }
}
