import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { KeptNotesFile } from '../../../src/editor/kept-notes-file';
import { WorkspaceJournals } from '../../../src/editor/workspace-journals';
import { workspaceNoteReader } from '../../../src/editor/workspace-note-source';
import type { NotePath } from '../../../src/journal/note';
import { eventually, type ScratchJournal, scratchJournal, workspaceRoot } from '../scratch-journal';

/** Two years back, a note a week: enough to be worth keeping. */
const old = Array.from({ length: 80 }, (_, week) => {
  const date = new Date(Date.UTC(2024, 0, 1 + 7 * week)).toISOString().slice(0, 10);
  return [`${date}.md`, `# ${date}\n\n- [x] #session skill 18:30 45min 5/10 with:coach\n`] as const;
});

describe('notes kept for the next start', () => {
  const storage = () => vscode.Uri.joinPath(workspaceRoot(), '.kept-notes-test');
  let scratch: ScratchJournal;
  let log: vscode.LogOutputChannel;
  let started: WorkspaceJournals[];

  /** Starts reading the workspace as a session does. @returns the notes whose files were read, and the journals */
  function start() {
    const read = new Set<NotePath>();
    const journals = new WorkspaceJournals(
      (folder) => {
        const reader = workspaceNoteReader(folder.uri);
        return {
          list: (shouldStop) => reader.list(shouldStop),
          read: (path) => {
            read.add(path);
            return reader.read(path);
          },
        };
      },
      log,
      (folder) => new KeptNotesFile(storage(), folder.uri, 'test'),
    );
    started.push(journals);
    return { read, journals };
  }

  const ofScratch = (paths: ReadonlySet<NotePath>) =>
    [...paths].filter((path) => path.startsWith('kept-notes/'));

  beforeEach(async () => {
    log = vscode.window.createOutputChannel('Tests of kept notes', { log: true });
    started = [];
    await vscode.workspace.fs.createDirectory(storage());
    scratch = await scratchJournal('kept-notes', {
      'journal.md': '#athlete "Petrel"\n',
      ...Object.fromEntries(old),
    });
  });

  afterEach(async () => {
    for (const journals of started) journals.dispose();
    log.dispose();
    await scratch.remove();
    await vscode.workspace.fs.delete(storage(), { recursive: true });
  });

  const keptFile = async () => {
    const files = await vscode.workspace.fs.readDirectory(storage());
    return files.map(([name]) => name).find((name) => name.endsWith('.notes'));
  };

  it('are taken by the next start for files that are the same, until all is to be read again', async () => {
    // Files that have just been written may be written again without looking other; they are kept once they rest.
    await new Promise((resolve) => setTimeout(resolve, 3500));
    const first = start();
    await first.journals.ready;
    assert.equal(ofScratch(first.read).length, 81);
    const name = await eventually('file of kept notes', keptFile);
    first.journals.dispose();

    await scratch.write('2024-01-08.md', '# 2024-01-08\n\n- [x] #session hoop 18:30 45min 5/10\n');
    const second = start();
    await second.journals.ready;
    assert.deepEqual(ofScratch(second.read), ['kept-notes/2024-01-08.md']);
    const journal = second.journals.byId(scratch.folder.toString())?.journal;
    assert.ok(journal);
    assert.equal([...journal.notes()].length, 81);
    assert.deepEqual(journal.names('kind'), ['skill', 'hoop']);
    assert.equal(journal.note('kept-notes/2024-01-01.md')?.text, old[0]?.[1]);

    second.read.clear();
    await second.journals.refresh();
    assert.equal(ofScratch(second.read).length, 81);
    assert.equal(await keptFile(), undefined);
    second.journals.dispose();

    await vscode.workspace.fs.writeFile(vscode.Uri.joinPath(storage(), name), new Uint8Array([1, 2, 3]));
    const third = start();
    await third.journals.ready;
    assert.equal(ofScratch(third.read).length, 81);
  });
});
