import * as vscode from 'vscode';
import { isoMonthOf } from '../../notation/time/iso-month';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import { monthName } from '../month-page/month-words';
import { readMonth } from '../month-page/page-data';
import { monthSheet, type SheetExtra, sheetExtras } from '../month-sheet/month-sheet';
import type { Paper } from '../month-sheet/sheet-style';
import { isRecord } from '../page/read-message';
import { askPrintedPlace, writePrintedFile } from '../printed-file';
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
    const suggested = vscode.Uri.joinPath(journal.uri, `month-${month}.html`);
    const target = extras && (given.file ?? (await askPrintedPlace(suggested)));
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
    await writePrintedFile(target, html, monthName(month, language));
  });
}
