import * as vscode from 'vscode';
import type { IsoMonth } from '../notation/time/iso-month';
import type { FromMonthPage, ToMonthPage } from '../pages/month-page-data';
import { chooseJournal } from './commands/choose-journal';
import { registerCommand } from './commands/run-command';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { monthPageData, readMonth, readMonthPageMessage, readMonthPageState } from './month-page/page-data';
import type { OpenJournal } from './open-journal';
import { PagePanel } from './page/page-panel';
import { isRecord } from './page/read-message';
import { readMonthSettings } from './settings';

const viewType = 'trainingJournal.monthPage';

/** A page, and the month that it was turned to; without one it shows the month of today. */
interface MonthPage {
  readonly panel: PagePanel<FromMonthPage>;
  month: IsoMonth | undefined;
}

/** The page of the month of each journal, at most one a journal. */
class MonthPages implements vscode.Disposable {
  readonly #context: FeatureContext;
  readonly #pages = new Map<string, MonthPage>();

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  /** Opens the page of a journal, or brings it to the front, turned to `month` when one is asked for. */
  show(journal: OpenJournal, month: IsoMonth | undefined): void {
    const page = this.#pages.get(journal.id);
    if (page) {
      page.month = month ?? page.month;
      page.panel.reveal();
      return;
    }
    const title = vscode.l10n.t('Month: {0}', journal.title);
    this.adopt(
      vscode.window.createWebviewPanel(viewType, title, vscode.ViewColumn.Active),
      journal.id,
      month,
    );
  }

  /** Fills a panel that is new, or that the editor kept. */
  adopt(panel: vscode.WebviewPanel, journal: string, month: IsoMonth | undefined): void {
    const page: MonthPage = {
      month,
      panel: new PagePanel<FromMonthPage>(this.#context, panel, journal, {
        script: 'month-page',
        title: vscode.l10n.t('Month'),
        read: readMonthPageMessage,
        show: (open) => {
          const { weekStart } = readMonthSettings(open.uri);
          const data = monthPageData(open, page.month, editorWords(), vscode.env.language, weekStart);
          return { title: data.title, message: { type: 'data', data } satisfies ToMonthPage };
        },
        answer: (message) => {
          if (message.type === 'print') {
            void vscode.commands.executeCommand('trainingJournal.printMonth', { journal, month: page.month });
            return;
          }
          page.month = message.month;
          page.panel.post();
        },
      }),
    };
    this.#pages.set(journal, page);
    panel.onDidDispose(() => {
      page.panel.dispose();
      if (this.#pages.get(journal) === page) this.#pages.delete(journal);
    });
  }

  refresh(): void {
    for (const { panel } of this.#pages.values()) panel.refresh();
  }

  dispose(): void {
    for (const { panel } of this.#pages.values()) panel.dispose();
  }
}

/** The page of the month: the command that opens it, and its return after a reload. */
export function registerMonthPage(context: FeatureContext): vscode.Disposable {
  const pages = new MonthPages(context);
  return vscode.Disposable.from(
    pages,
    registerCommand(context, 'openMonthPage', async (asked) => {
      const named = isRecord(asked) ? asked : {};
      const journal = await chooseJournal(context.journals, named.journal);
      if (journal) pages.show(journal, readMonth(named.month));
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel, kept) {
        const state = readMonthPageState(kept);
        // A page that kept nothing was closed before it was filled.
        if (state) pages.adopt(panel, state.journal, readMonth(state.month));
        else panel.dispose();
      },
    }),
    context.onDidChangeDay(() => pages.refresh()),
  );
}
