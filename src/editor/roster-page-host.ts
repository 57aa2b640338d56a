import * as vscode from 'vscode';
import type { FromRosterPage, RosterAct, ToRosterPage } from '../pages/roster-page-data';
import { KeptFacts } from '../training/roster/kept-facts';
import { registerCommand } from './commands/run-command';
import type { Findings } from './diagnostics';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import type { OpenJournal } from './open-journal';
import { type JournalPage, JournalPages, keepPagesAlive } from './page/journal-pages';
import { openBesidePage } from './page/open-beside-page';
import { WebPage } from './page/web-page';
import { readRosterPageMessage, readRosterPageState, rosterPageData } from './roster-page/page-data';

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

  constructor(context: FeatureContext, findings: Findings, kept: KeptFacts, panel: vscode.WebviewPanel) {
    const { journals } = context;
    this.#page = new WebPage<FromRosterPage>(context, panel, {
      script: 'roster-page',
      title: vscode.l10n.t('Athletes'),
      guide: 'coaching.md',
      read: readRosterPageMessage,
      concerns: () => true,
      show: () => {
        const findingsOf = (open: { readonly id: string }) => {
          const journal = journals.byId(open.id);
          return journal ? findings.of(journal) : [];
        };
        const source = { journals: journals.all(), kept, findingsOf };
        const data = rosterPageData(source, editorWords(), vscode.env.language);
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

/** The page of the roster: the command that opens it, and its return after a reload. */
export function registerRosterPage(context: FeatureContext, findings: Findings): vscode.Disposable {
  const pages = new JournalPages<RosterPage>('trainingJournal.rosterPage');
  const kept = new KeptFacts();
  const adopt = (panel: vscode.WebviewPanel): void =>
    pages.add(panel, new RosterPage(context, findings, kept, panel));
  const forget = ({ journal }: OpenJournal): void => kept.forget(journal);
  return vscode.Disposable.from(
    registerCommand(context, 'openRoster', async () => {
      await context.journals.ready;
      const page = pages.of('');
      if (page) page.reveal();
      else adopt(pages.newPanel(vscode.l10n.t('Athletes')));
    }),
    // Before the page is drawn again, which is a moment later.
    context.journals.onDidChange((changes) => {
      for (const change of changes) forget(change.journal);
    }),
    findings.onDidChange(() => pages.refresh()),
    keepPagesAlive(context, pages, readRosterPageState, adopt),
  );
}
