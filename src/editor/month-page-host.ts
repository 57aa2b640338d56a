import * as vscode from 'vscode';
import type { IsoMonth } from '../notation/time/iso-month';
import { chooseJournal } from './commands/choose-journal';
import { registerCommand } from './commands/run-command';
import type { FeatureContext } from './feature-context';
import { MonthPagePanel } from './month-page/month-page-panel';
import { readMonth, readMonthPageState } from './month-page/page-data';
import { JournalPages, keepPagesAlive } from './page/journal-pages';
import { isRecord } from './page/read-message';

/** The page of the month: the command that opens it, and its return after a reload. */
export function registerMonthPage(context: FeatureContext): vscode.Disposable {
  const pages = new JournalPages<MonthPagePanel>('trainingJournal.monthPage');
  const adopt = (panel: vscode.WebviewPanel, journal: string, month: IsoMonth | undefined): void =>
    pages.add(panel, new MonthPagePanel(context, panel, journal, month));
  return vscode.Disposable.from(
    registerCommand(context, 'openMonthPage', async (asked) => {
      const named = isRecord(asked) ? asked : {};
      const journal = await chooseJournal(context.journals, named.journal);
      if (!journal) return;
      const month = readMonth(named.month);
      const page = pages.of(journal.id);
      if (page) page.reveal(month);
      else adopt(pages.newPanel(vscode.l10n.t('Month: {0}', journal.title)), journal.id, month);
    }),
    keepPagesAlive(context, pages, readMonthPageState, (panel, state) =>
      adopt(panel, state.journal, readMonth(state.month)),
    ),
  );
}
