import * as vscode from 'vscode';
import type { FromRosterPage, RosterAct, RosterPageData, ToRosterPage } from '../pages/roster-page-data';
import { registerCommand } from './commands/run-command';
import type { Findings } from './diagnostics';
import type { FeatureContext } from './feature-context';
import { type JournalPage, JournalPages, keepPagesAlive } from './page/journal-pages';
import { openBesidePage } from './page/open-beside-page';
import { WebPage } from './page/web-page';
import { readRosterPageMessage, readRosterPageState } from './roster-page/page-data';

/** The commands behind what a coach can do from the page. */
const actCommands: Readonly<Record<RosterAct, string>> = {
  lay: 'trainingJournal.addToJournals',
  copy: 'trainingJournal.copyWeeks',
  comment: 'trainingJournal.writeComment',
};

/** The page of all athletes of the workspace. */
class RosterPage implements JournalPage {
  readonly journal = '';
  readonly #page: WebPage<FromRosterPage>;

  constructor(context: FeatureContext, dataNow: () => RosterPageData, panel: vscode.WebviewPanel) {
    const { journals } = context;
    this.#page = new WebPage<FromRosterPage>(context, panel, {
      script: 'roster-page',
      title: vscode.l10n.t('Athletes'),
      guide: 'coaching.md',
      read: readRosterPageMessage,
      concerns: () => true,
      show: () => {
        const data = dataNow();
        return { title: data.title, message: { type: 'data', data } satisfies ToRosterPage };
      },
      answer: (message) => {
        switch (message.type) {
          case 'openIn':
            void openBesidePage(journals.byId(message.journal), message.place, panel);
            break;
          case 'goal':
            void vscode.commands.executeCommand('trainingJournal.openGoalPage', {
              journal: message.journal,
              goal: message.goal,
            });
            break;
          case 'act':
            void vscode.commands.executeCommand(actCommands[message.act], { journal: message.journal });
        }
      },
    });
  }

  reveal(): void {
    this.#page.reveal();
  }

  refresh(): void {
    this.#page.refresh();
  }

  dispose(): void {
    this.#page.dispose();
  }
}

/**
 * The page of the roster: the command that opens it, and its return after a reload.
 * @param dataNow what it shows now
 */
export function registerRosterPage(
  context: FeatureContext,
  findings: Findings,
  dataNow: () => RosterPageData,
): vscode.Disposable {
  const pages = new JournalPages<RosterPage>('trainingJournal.rosterPage');
  const adopt = (panel: vscode.WebviewPanel): void =>
    pages.add(panel, new RosterPage(context, dataNow, panel));
  return vscode.Disposable.from(
    registerCommand(context, 'openRoster', async () => {
      await context.journals.ready;
      const page = pages.of('');
      if (page) page.reveal();
      else adopt(pages.newPanel(vscode.l10n.t('Athletes')));
    }),
    findings.onDidChange(() => pages.refresh()),
    keepPagesAlive(context, pages, readRosterPageState, adopt),
  );
}
