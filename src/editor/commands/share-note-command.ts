import * as vscode from 'vscode';
import {
  isSharingOff,
  partsOnOffer,
  type SharePart,
  type ShareSubject,
  shareNote,
  sharePartTitle,
} from '../../planning/share-note';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { askPrintedPlace, writePrintedFile } from '../printed-file';
import { say } from '../sentences';
import { readMonthSettings } from '../settings';
import { shareSheet } from '../share-sheet/share-sheet';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';
import { askPartner, askSubject, subjectFrom } from './share-subjects';

type Way = 'copy' | 'save' | 'print' | 'keep' | 'discard';

interface PartChoice extends vscode.QuickPickItem {
  readonly part: SharePart;
}

/** What may leave beside sessions and figures: nothing is ticked in advance. `undefined` when it was cancelled. */
async function askParts(
  journal: OpenJournal,
  subject: ShareSubject,
): Promise<readonly SharePart[] | undefined> {
  const offered = partsOnOffer(journal.journal, {
    today: journal.today(),
    zone: journal.zone(),
    subject,
    say,
  });
  if (offered.length === 0) return [];
  const picked = await vscode.window.showQuickPick(
    offered.map(
      ({ part, lines }): PartChoice => ({
        label: say(sharePartTitle(part)),
        description: lines === 1 ? vscode.l10n.t('1 line') : vscode.l10n.t('{0} lines', lines),
        part,
      }),
    ),
    {
      title: vscode.l10n.t('Private: what may leave?'),
      placeHolder: vscode.l10n.t('What is not ticked stays here. The next step shows all that will leave'),
      canPickMany: true,
    },
  );
  return picked?.map(({ part }) => part);
}

async function askWay(): Promise<Way | undefined> {
  const rows: readonly (vscode.QuickPickItem & { readonly way: Way })[] = [
    { label: `$(copy) ${vscode.l10n.t('Copy all of it')}`, way: 'copy' },
    { label: `$(save) ${vscode.l10n.t('Save it as a file…')}`, way: 'save' },
    { label: `$(browser) ${vscode.l10n.t('Save it as a page to print…')}`, way: 'print' },
    {
      label: `$(edit) ${vscode.l10n.t('Read it in full first')}`,
      description: vscode.l10n.t('and take out words; it is asked again'),
      way: 'keep',
    },
    { label: `$(trash) ${vscode.l10n.t('Throw it away')}`, way: 'discard' },
  ];
  const picked = await vscode.window.showQuickPick([...rows], {
    title: vscode.l10n.t('The editor shows exactly what will leave'),
    placeHolder: vscode.l10n.t('Escape throws it away; nothing is written'),
    ignoreFocusOut: true,
  });
  return picked?.way;
}

async function throwAway(document: vscode.TextDocument): Promise<void> {
  if (document.isClosed) return;
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
}

function subjectName(subject: ShareSubject): string {
  switch (subject.is) {
    case 'week':
      return subject.week;
    case 'month':
      return subject.month;
    case 'goal':
      return subject.goal;
    case 'partner':
      return subject.partner;
  }
}

function fileName(subject: ShareSubject, ending: 'md' | 'html'): string {
  const name = subjectName(subject);
  return `shared ${name.replace(/[\\/:*?"<>|\s]+/gu, ' ').trim()}.${ending}`;
}

/** @returns whether it was written. */
async function save(journal: OpenJournal, subject: ShareSubject, text: string): Promise<boolean> {
  const target = await vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.joinPath(journal.uri, fileName(subject, 'md')),
    filters: { Markdown: ['md'] },
    title: vscode.l10n.t('Where is the note saved?'),
  });
  if (!target) return false;
  await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(text));
  return true;
}

/** @returns whether it was written. */
async function print(journal: OpenJournal, subject: ShareSubject, text: string): Promise<boolean> {
  const suggested = vscode.Uri.joinPath(journal.uri, fileName(subject, 'html'));
  const target = await askPrintedPlace(suggested);
  if (!target) return false;
  const { paper } = readMonthSettings(journal.uri);
  const html = shareSheet(text, { paper, language: vscode.env.language });
  return writePrintedFile(target, html, fileName(subject, 'html'));
}

/** Does with the note, as it reads now, what the person says. */
async function leave(
  journal: OpenJournal,
  subject: ShareSubject,
  document: vscode.TextDocument,
  way: Way,
): Promise<void> {
  const text = document.getText();
  switch (way) {
    case 'copy':
      await vscode.env.clipboard.writeText(text);
      vscode.window.setStatusBarMessage(vscode.l10n.t('The note is on the clipboard.'), 4000);
      break;
    case 'save':
      if (!(await save(journal, subject, text))) return;
      break;
    case 'print':
      if (!(await print(journal, subject, text))) return;
      break;
    case 'keep':
      // The command ends here; the message waits for the person, below the text.
      void askBelow(journal, subject, document);
      return;
    case 'discard':
  }
  await throwAway(document);
}

async function askBelow(
  journal: OpenJournal,
  subject: ShareSubject,
  document: vscode.TextDocument,
): Promise<void> {
  const copy = vscode.l10n.t('Copy');
  const save = vscode.l10n.t('Save…');
  const print = vscode.l10n.t('Print…');
  const discard = vscode.l10n.t('Throw away');
  const ways: Readonly<Record<string, Way>> = {
    [copy]: 'copy',
    [save]: 'save',
    [print]: 'print',
    [discard]: 'discard',
  };
  const answer = await vscode.window.showInformationMessage(
    vscode.l10n.t('What the editor shows is all that leaves. You can change it.'),
    copy,
    save,
    print,
    discard,
  );
  const way = answer === undefined ? undefined : ways[answer];
  if (way && !document.isClosed) await leave(journal, subject, document, way);
}

/** Shows the note in an editor of its own, which is no file, and lets it leave the way the person says. */
async function preview(journal: OpenJournal, subject: ShareSubject, content: string): Promise<void> {
  const document = await vscode.workspace.openTextDocument({ language: 'markdown', content });
  await vscode.window.showTextDocument(document, { preview: false });
  const way = await askWay();
  // Words that were changed meanwhile are thrown away only when that is said.
  if (way === undefined && document.getText() !== content) return;
  await leave(journal, subject, document, way ?? 'discard');
}

async function share(
  journal: OpenJournal,
  ask: (journal: OpenJournal) => Promise<ShareSubject | undefined>,
): Promise<void> {
  if (isSharingOff(journal.journal.plan, journal.today())) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t(
        'This is the journal of an athlete under 18: notes for sharing are off until a guardian has agreed. The line in journal.md then says so with a date: {0}',
        '#athlete … minor consent:2026-02-24',
      ),
    );
    return;
  }
  const subject = await ask(journal);
  const parts = subject && (await askParts(journal, subject));
  if (!subject || !parts) return;
  const options = { today: journal.today(), zone: journal.zone(), subject, parts, say };
  await preview(journal, subject, shareNote(journal.journal, options));
}

/** Commands that make a note for the person who holds the athlete to it. Nothing leaves, and no file is written, unseen. */
export function registerShareCommands(context: FeatureContext): vscode.Disposable {
  return vscode.Disposable.from(
    registerCommand(context, 'writeShareNote', async (id, asked) => {
      const journal = await chooseJournal(context.journals, id);
      const subject = subjectFrom(asked);
      if (journal) await share(journal, async (one) => subject ?? askSubject(one));
    }),
    registerCommand(context, 'openPartnerList', async (id, asked) => {
      const journal = await chooseJournal(context.journals, id);
      const subject = subjectFrom(asked);
      if (journal) await share(journal, async (one) => subject ?? askPartner(one));
    }),
  );
}
