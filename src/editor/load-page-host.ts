import * as vscode from 'vscode';
import type { FromLoadPage, ToLoadPage } from '../pages/load-page-data';
import { chooseJournal } from './commands/choose-journal';
import { registerCommand } from './commands/run-command';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { loadPageData, readLoadPageState } from './load-page/page-data';
import { JournalPages, keepPagesAlive } from './page/journal-pages';
import { PagePanel } from './page/page-panel';
import { isRecord, readCommonMessage } from './page/read-message';

/** The page about load and recovery: the command that opens it, and its return after a reload. */
export function registerLoadPage(context: FeatureContext): vscode.Disposable {
  const pages = new JournalPages<PagePanel<FromLoadPage>>('trainingJournal.loadPage');
  const adopt = (panel: vscode.WebviewPanel, journal: string): void =>
    pages.add(
      panel,
      new PagePanel<FromLoadPage>(context, panel, journal, {
        script: 'load-page',
        title: vscode.l10n.t('Load and recovery'),
        read: readCommonMessage,
        show: (open) => {
          const data = loadPageData(open, editorWords(), vscode.env.language, open.settings.recoveryChance);
          return { title: data.title, message: { type: 'data', data } satisfies ToLoadPage };
        },
        answer: () => {},
      }),
    );
  return vscode.Disposable.from(
    registerCommand(context, 'openLoadPage', async (asked) => {
      const id = isRecord(asked) && typeof asked.journal === 'string' ? asked.journal : undefined;
      const journal = await chooseJournal(context.journals, id);
      if (!journal) return;
      const page = pages.of(journal.id);
      if (page) page.reveal();
      else adopt(pages.newPanel(vscode.l10n.t('Load and recovery: {0}', journal.title)), journal.id);
    }),
    keepPagesAlive(context, pages, readLoadPageState, (panel, state) => adopt(panel, state.journal)),
  );
}
