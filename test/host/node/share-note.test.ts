import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { accept, endLists, leave } from '../end-lists';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

/** A list is taken for filled after this time: nothing tells of it. */
const untilFilled = 400;

const notes = {
  'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
  'zz.md': '- #rule flexibility gap:none\n',
  'goals.md':
    '- #goal low-split by:2026-06-14 "Front split"\n- #why secret words\n- #metric gap from:14cm to:0cm\n',
  '2026-02-23.md':
    '- [x] #session flexibility 18:30 75min 7/10 with:juno -- secret remark\n- #pain left-wrist 4/10\n',
};

const expected = `# Training in the week 2026-W09

2026-02-23 to 2026-03-01.

## Sessions

Kept: 1 of 1 planned sessions.

- Monday, 2026-02-23: 18:30 flexibility, 75 min, 7/10: kept

As of 2026-02-25.
`;

function untitled(): readonly vscode.TextDocument[] {
  return vscode.workspace.textDocuments.filter(({ uri, isClosed }) => uri.scheme === 'untitled' && !isClosed);
}

/** Runs a command, takes nothing but what is ticked of what may leave, and ends the last list as `end` does. */
async function share(command: string, subject: object, end: string): Promise<string> {
  const running = vscode.commands.executeCommand(`trainingJournal.${command}`, undefined, subject);
  const shown = await eventually('preview', async () => {
    const [document] = untitled();
    if (document) return document.getText();
    await new Promise((resolve) => setTimeout(resolve, untilFilled));
    if (untitled().length === 0) await vscode.commands.executeCommand(accept);
    return undefined;
  });
  await endLists(running, [end], untilFilled);
  return shown;
}

describe('a note to share', () => {
  let journal: ScratchJournal | undefined;
  let count = 0;

  async function opened(more: Readonly<Record<string, string>> = {}): Promise<ScratchJournal> {
    count += 1;
    journal = await scratchJournal(`share-${count}`, { ...notes, ...more });
    await findingIn(journal.uri('zz.md'), 'unreadable-field');
    await journal.show('journal.md');
    await vscode.env.clipboard.writeText('before');
    return journal;
  }

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  it('is shown whole before it is copied, holds nothing private, and leaves no file behind', async () => {
    const { folder } = await opened();
    const before = await vscode.workspace.fs.readDirectory(folder);
    assert.equal(await share('writeShareNote', { week: '2026-W09' }, accept), expected);
    assert.equal(await vscode.env.clipboard.readText(), expected);
    assert.deepEqual(untitled(), []);
    assert.deepEqual(await vscode.workspace.fs.readDirectory(folder), before);
  });

  it('goes nowhere when the preview is left', async () => {
    const { folder } = await opened();
    const before = await vscode.workspace.fs.readDirectory(folder);
    assert.equal(await share('writeShareNote', { week: '2026-W09' }, leave), expected);
    assert.equal(await vscode.env.clipboard.readText(), 'before');
    assert.deepEqual(untitled(), []);
    assert.deepEqual(await vscode.workspace.fs.readDirectory(folder), before);
  });

  it('lists the sessions booked with one partner', async () => {
    await opened();
    const text = await share('openPartnerList', { partner: 'juno' }, leave);
    assert.match(text, /^# Sessions with juno\n/);
    assert.match(text, /^- Monday, 2026-02-23: 18:30 flexibility, 75 min, 7\/10: kept$/m);
    assert.doesNotMatch(text, /secret|wrist/);
  });

  it('is off for an athlete under 18', async () => {
    await opened({ 'journal.md': '#athlete "Wren" minor\n' });
    await vscode.commands.executeCommand('trainingJournal.writeShareNote', undefined, { week: '2026-W09' });
    assert.deepEqual(untitled(), []);
  });
});
