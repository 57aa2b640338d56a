import * as vscode from 'vscode';
import { isoMonthOf } from '../../notation/time/iso-month';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import { monthName } from '../month-page/month-words';
import { readMonth } from '../month-page/page-data';
import { monthSheet, type SheetExtra, sheetExtras } from '../month-sheet/month-sheet';
import type { Paper } from '../month-sheet/sheet-style';
import type { OpenJournal } from '../open-journal';
import { isRecord } from '../page/read-message';
import { readMonthSettings } from '../settings';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

function extraWords(extra: SheetExtra): { readonly label: string; readonly description: string } {
  switch (extra) {
    case 'name':
      return { label: vscode.l10n.t('The name'), description: vscode.l10n.t('whose month it is') };
    case 'reasons':
      return {
        label: vscode.l10n.t('Reasons'),
        description: vscode.l10n.t('why sessions were left out; they can tell of health'),
      };
    case 'events':
      return { label: vscode.l10n.t('Names of events'), description: vscode.l10n.t('as you wrote them') };
  }
}

/** What may stand on the sheet: nothing is ticked at first. `undefined` when the person turned back. */
async function askExtras(): Promise<ReadonlySet<SheetExtra> | undefined> {
  const picked = await vscode.window.showQuickPick(
    sheetExtras.map((extra) => ({ ...extraWords(extra), extra })),
    {
      canPickMany: true,
      title: vscode.l10n.t('What stands on the sheet beside kinds, times and marks?'),
      placeHolder: vscode.l10n.t('Nothing private is on it unless you tick it here'),
    },
  );
  return picked && new Set(picked.map(({ extra }) => extra));
}

async function askPlace(journal: OpenJournal, month: string): Promise<vscode.Uri | undefined> {
  return vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.joinPath(journal.uri, `month-${month}.html`),
    filters: { [vscode.l10n.t('Web page')]: ['html'] },
    title: vscode.l10n.t('Where is the sheet saved?'),
    saveLabel: vscode.l10n.t('Save'),
  });
}

/** The editor hands files to the system only where both are on one machine. */
function canOpenOutside(target: vscode.Uri): boolean {
  return (
    target.scheme === 'file' &&
    vscode.env.remoteName === undefined &&
    vscode.env.uiKind === vscode.UIKind.Desktop
  );
}

async function tellWritten(target: vscode.Uri): Promise<void> {
  const name = vscode.workspace.asRelativePath(target);
  if (!canOpenOutside(target)) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('{0} is written. Open it in a browser on your machine to print it.', name),
    );
    return;
  }
  const open = vscode.l10n.t('Open in the Browser');
  const answer = await vscode.window.showInformationMessage(vscode.l10n.t('{0} is written.', name), open);
  if (answer === open) await vscode.env.openExternal(target);
}

/** What a call hands over beside journal and month; each that is left out is asked for, or set. */
function readAsked(asked: Readonly<Record<string, unknown>>): {
  readonly file?: vscode.Uri;
  readonly paper?: Paper;
  readonly extras?: ReadonlySet<SheetExtra>;
} {
  const { file, paper, extras } = asked;
  return {
    ...(typeof file === 'string' ? { file: vscode.Uri.parse(file) } : {}),
    ...(paper === 'a4' || paper === 'letter' ? { paper } : {}),
    ...(Array.isArray(extras) ? { extras: new Set(sheetExtras.filter((one) => extras.includes(one))) } : {}),
  };
}

/** Writes a month as one printable file where the person chooses, and offers to open it in the system's browser. */
export function registerPrintMonthCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'printMonth', async (asked) => {
    const named = isRecord(asked) ? asked : {};
    const journal = await chooseJournal(context.journals, named.journal);
    if (!journal) return;
    const given = readAsked(named);
    const month = readMonth(named.month) ?? isoMonthOf(journal.today());
    const extras = given.extras ?? (await askExtras());
    const target = extras && (given.file ?? (await askPlace(journal, month)));
    if (!extras || !target) return;
    const { weekStart, paper } = readMonthSettings(journal.uri);
    const language = vscode.env.language;
    const words = editorWords();
    const html = monthSheet(journal, {
      month,
      weekStart,
      paper: given.paper ?? paper,
      extras,
      language,
      words,
    });
    try {
      await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(html));
    } catch (error) {
      if (!(error instanceof vscode.FileSystemError)) throw error;
      void vscode.window.showErrorMessage(
        vscode.l10n.t('{0} could not be written: {1}', monthName(month, language), error.message),
      );
      return;
    }
    // The command ends when the file is there, and does not wait for the message to be read.
    void tellWritten(target);
  });
}
