import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { applyChanges, IncompleteChangeError, StaleChangeError } from '../../../src/editor/apply-changes';
import type { OpenJournal } from '../../../src/editor/open-journal';
import { accept, endLists } from '../end-lists';
import {
  eventually,
  findingIn,
  type ScratchJournal,
  scratchJournal,
  workspaceRoot,
} from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

/** Runs a command and takes the chosen rows of every list that it opens, until it is done. */
function runAccepting(command: string, argument?: unknown): Promise<void> {
  return endLists(vscode.commands.executeCommand(`trainingJournal.${command}`, argument), [accept], 300);
}

describe('a command', () => {
  let journal: ScratchJournal | undefined;
  let count = 0;

  /** A journal that is read: a field that cannot be is found in it. */
  async function opened(notes: Readonly<Record<string, string>>): Promise<ScratchJournal> {
    count += 1;
    journal = await scratchJournal(`commands-${count}`, {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'zz.md': '- #rule flexibility gap:none\n',
      ...notes,
    });
    await findingIn(journal.uri('zz.md'), 'unreadable-field');
    await journal.show('journal.md');
    return journal;
  }

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  describe('that opens today’s note', () => {
    it('creates it beside the other day notes, once', async () => {
      const { read, write, uri } = await opened({ 'log/2026-02-23.md': '# Monday\r\n' });
      await vscode.commands.executeCommand('trainingJournal.openToday');
      const editor = vscode.window.activeTextEditor;
      assert.equal(editor?.document.uri.toString(), uri('log/2026-02-25.md').toString());
      const text = await read('log/2026-02-25.md');
      assert.match(text, /^# Wednesday, 2026-02-25\r\n/);
      assert.equal(editor?.selection.active.line, (editor?.document.lineCount ?? 0) - 1);
      await write('log/2026-02-25.md', `${text}Words of mine.\r\n`);
      await vscode.commands.executeCommand('trainingJournal.openToday');
      assert.equal(await read('log/2026-02-25.md'), `${text}Words of mine.\r\n`);
    });

    it('opens the one that is there, whatever else is in its name', async () => {
      const { uri, exists } = await opened({ '2026-02-25 evening.md': '# Evening\n' });
      await vscode.commands.executeCommand('trainingJournal.openToday');
      assert.equal(
        vscode.window.activeTextEditor?.document.uri.toString(),
        uri('2026-02-25 evening.md').toString(),
      );
      assert.equal(await exists('2026-02-25.md'), false);
    });
  });

  it('that creates a starter journal leaves the files that are there alone', async () => {
    const root = workspaceRoot();
    const names = ['goals.md', 'routines.md', 'rules.md', 'hours.md', '2026-02-25.md'];
    const bytes = async (name: string) =>
      new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(root, name)));
    const before = await bytes('journal.md');
    const mine = '# My hours\n';
    await vscode.workspace.fs.writeFile(
      vscode.Uri.joinPath(root, 'hours.md'),
      new TextEncoder().encode(mine),
    );
    try {
      await vscode.commands.executeCommand('trainingJournal.createStarterJournal');
      assert.equal(await bytes('journal.md'), before);
      assert.equal(await bytes('hours.md'), mine);
      assert.match(await bytes('goals.md'), /^- #goal /m);
      assert.match(await bytes('2026-02-25.md'), /#session recovery/);
      assert.ok(vscode.window.activeTextEditor?.document.uri.path.endsWith('/goals.md'));
      const goals = await bytes('goals.md');
      await vscode.commands.executeCommand('trainingJournal.createStarterJournal');
      assert.equal(await bytes('goals.md'), goals);
    } finally {
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
      for (const name of names) await vscode.workspace.fs.delete(vscode.Uri.joinPath(root, name));
    }
  });

  describe('on the session under the cursor', () => {
    const note =
      '# Wednesday\n\n- [ ] #session skill 10:00 45min\n- [ ] #session strength 18:30 60min 6/10 -- slow\n  - squats\n';

    it('ticks it, and unticks it', async () => {
      const { show, read } = await opened({ '2026-02-25.md': note });
      await show('2026-02-25.md', 'squats');
      await vscode.commands.executeCommand('trainingJournal.tickSession');
      const ticked = note.replace('[ ] #session strength', '[x] #session strength');
      assert.equal(await read('2026-02-25.md'), ticked);
      await vscode.commands.executeCommand('trainingJournal.tickSession');
      assert.equal(await read('2026-02-25.md'), note);
    });

    it('is taken back by one undo', async () => {
      const { show } = await opened({ '2026-02-25.md': note });
      const { document } = await show('2026-02-25.md', 'skill');
      await vscode.commands.executeCommand('trainingJournal.tickSession');
      assert.match(document.getText(), /\[x\] #session skill/);
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), note);
    });

    it('asks for the reason why it is skipped', async () => {
      const { show, read } = await opened({ '2026-02-25.md': note });
      await show('2026-02-25.md', 'strength');
      await runAccepting('skipSession');
      assert.equal(await read('2026-02-25.md'), note.replace('60min 6/10 --', '60min 6/10 skipped:sore --'));
    });

    it('asks for the day to which it is moved', async () => {
      const { show, read } = await opened({ '2026-02-25.md': note });
      await show('2026-02-25.md', 'strength');
      await runAccepting('moveSession');
      assert.equal(
        await read('2026-02-25.md'),
        note.replace('60min 6/10 --', '60min 6/10 moved:2026-02-26 --'),
      );
      assert.equal(
        await read('2026-02-26.md'),
        '# Thursday, 2026-02-26\n\n- [ ] #session strength 18:30 60min 6/10 -- slow\n  - squats\n',
      );
    });

    it('asks how hard it was', async () => {
      const { show, read } = await opened({ '2026-02-25.md': note });
      await show('2026-02-25.md', 'skill');
      await runAccepting('rateSession');
      assert.equal(await read('2026-02-25.md'), note.replace('skill 10:00 45min', 'skill 10:00 45min 1/10'));
    });

    it('changes nothing where there is no session', async () => {
      const { show, read } = await opened({ '2026-02-25.md': note });
      await show('2026-02-25.md', '# Wednesday');
      for (const command of ['tickSession', 'skipSession', 'moveSession', 'rateSession'])
        await vscode.commands.executeCommand(`trainingJournal.${command}`);
      assert.equal(await read('2026-02-25.md'), note);
    });
  });

  it('that adds a measurement writes nothing when no reading is given', async () => {
    const { read } = await opened({
      'goals.md': '- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n',
      '2026-02-25.md': '# Wednesday\n',
    });
    await runAccepting('addMeasurement');
    assert.equal(await read('2026-02-25.md'), '# Wednesday\n');
  });

  describe('that writes next week', () => {
    const notes = {
      'goals.md':
        '- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 75min 7/10 routine:split-evening\n',
      'routines.md': '- #routine split-evening flexibility 75min\n  - warm-up: ten minutes\n  - lunges\n',
      'hours.md': '- #free mon tue wed thu fri 18:00-21:00\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 7/10 for:low-split\n',
      '2026-03-03.md': '# Tuesday\n\nThe studio is closed until seven.\n',
    };
    const week = ['02', '03', '04', '05', '06', '07', '08'].map((day) => `2026-03-${day}.md`);

    it('writes seven notes with the routines in them, keeps what stands there, and adds nothing twice', async () => {
      const { read } = await opened(notes);
      const texts = await eventually('next week', async () => {
        await runAccepting('writeNextWeek');
        return Promise.all(week.map((path) => read(path))).catch(() => undefined);
      });
      const whole = texts.join('\n');
      assert.equal(whole.match(/#session flexibility/g)?.length, 2);
      assert.equal(whole.match(/ {2}- warm-up: ten minutes\n {2}- lunges/g)?.length, 2);
      assert.equal(whole.match(/#session recovery/g)?.length, 1);
      assert.ok(texts[1]?.startsWith(notes['2026-03-03.md']));
      await runAccepting('writeNextWeek');
      assert.deepEqual(await Promise.all(week.map((path) => read(path))), texts);
    });

    it('writes nothing for a journal that asks for nothing', async () => {
      const { exists } = await opened({ 'rules.md': '- #rule recovery min:0/week\n' });
      await runAccepting('writeNextWeek');
      assert.deepEqual(await Promise.all(week.map((path) => exists(path))), Array(7).fill(false));
    });
  });

  describe('that changes notes', () => {
    /** As much of a journal as writing needs. */
    const target = ({ uri }: ScratchJournal) =>
      ({ uriOf: (note: string) => uri(note) }) as unknown as OpenJournal;

    it('writes nothing at all when a note reads otherwise than it was planned for', async () => {
      const scratch = await opened({ '2026-02-25.md': 'New words.\n' });
      await assert.rejects(
        applyChanges(target(scratch), [
          { kind: 'create', note: '2026-02-26.md', text: '# Thursday\n' },
          {
            kind: 'edit',
            note: '2026-02-25.md',
            before: 'Old words.\n',
            edits: [{ range: { start: 0, end: 3 }, text: 'My' }],
          },
        ]),
        StaleChangeError,
      );
      assert.equal(await scratch.exists('2026-02-26.md'), false);
      assert.equal(await scratch.read('2026-02-25.md'), 'New words.\n');
    });

    it('writes nothing at all when a note that is to be created is there', async () => {
      const scratch = await opened({ '2026-02-25.md': 'Words.\n' });
      await assert.rejects(
        applyChanges(target(scratch), [
          { kind: 'create', note: '2026-02-26.md', text: '# Thursday\n' },
          { kind: 'create', note: '2026-02-25.md', text: '# Wednesday\n' },
        ]),
        StaleChangeError,
      );
      assert.equal(await scratch.exists('2026-02-26.md'), false);
      assert.equal(await scratch.read('2026-02-25.md'), 'Words.\n');
    });

    it('says what is missing when the editor cannot write it', async () => {
      const scratch = await opened({ '2026-02-25.md': 'Words.\n' });
      await assert.rejects(
        applyChanges(target(scratch), [
          // A file where a folder would have to be.
          { kind: 'create', note: '2026-02-25.md/2026-02-26.md', text: '# Thursday\n' },
        ]),
        IncompleteChangeError,
      );
    });
  });
});
