import * as vscode from 'vscode';
import type { FromLoadPage, ToLoadPage } from '../pages/load-page-data';
import { chooseJournal } from './commands/choose-journal';
import { registerCommand } from './commands/run-command';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { loadPageData, readLoadPageState } from './load-page/page-data';
import type { OpenJournal } from './open-journal';
import { PagePanel } from './page/page-panel';
import { isRecord, readCommonMessage } from './page/read-message';

const viewType = 'trainingJournal.loadPage';

/** The page about load and recovery of each journal, at most one a journal. */
class LoadPages implements vscode.Disposable {
  readonly #context: FeatureContext;
  readonly #pages = new Map<string, PagePanel<FromLoadPage>>();

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  /** Opens the page of a journal, or brings it to the front. */
  show(journal: OpenJournal): void {
    const page = this.#pages.get(journal.id);
    if (page) {
      page.reveal();
      return;
    }
    const title = vscode.l10n.t('Load and recovery: {0}', journal.title);
    this.adopt(vscode.window.createWebviewPanel(viewType, title, vscode.ViewColumn.Active), journal.id);
  }

  /** Fills a panel that is new, or that the editor kept. */
  adopt(panel: vscode.WebviewPanel, journal: string): void {
    const page = new PagePanel<FromLoadPage>(this.#context, panel, journal, {
      script: 'load-page',
      title: vscode.l10n.t('Load and recovery'),
      read: readCommonMessage,
      show: (open) => {
        const data = loadPageData(open, editorWords(), vscode.env.language, open.settings.recoveryChance);
        return { title: data.title, message: { type: 'data', data } satisfies ToLoadPage };
      },
      answer: () => {},
    });
    this.#pages.set(journal, page);
    panel.onDidDispose(() => {
      page.dispose();
      if (this.#pages.get(journal) === page) this.#pages.delete(journal);
    });
  }

  refresh(): void {
    for (const page of this.#pages.values()) page.refresh();
  }

  dispose(): void {
    for (const page of this.#pages.values()) page.dispose();
  }
}

/** The page about load and recovery: the command that opens it, and its return after a reload. */
export function registerLoadPage(context: FeatureContext): vscode.Disposable {
  const pages = new LoadPages(context);
  return vscode.Disposable.from(
    pages,
    registerCommand(context, 'openLoadPage', async (asked) => {
      const id = isRecord(asked) && typeof asked.journal === 'string' ? asked.journal : undefined;
      const journal = await chooseJournal(context.journals, id);
      if (journal) pages.show(journal);
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel, kept) {
        const state = readLoadPageState(kept);
        // A page that kept nothing was closed before it was filled.
        if (state) pages.adopt(panel, state.journal);
        else panel.dispose();
      },
    }),
    context.onDidChangeDay(() => pages.refresh()),
  );
}
