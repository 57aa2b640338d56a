import * as vscode from 'vscode';
import { goalProgress } from '../training/goal-progress';
import { chooseJournal } from './commands/choose-journal';
import { registerCommand } from './commands/run-command';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { GoalPagePanel } from './goal-page/goal-page-panel';
import { goalsInOrder } from './goal-page/page-data';
import { readPageState } from './goal-page/page-messages';
import { readingsAsMarkdown } from './goal-page/readings-table';
import type { OpenJournal } from './open-journal';
import { JournalPages, keepPagesAlive } from './page/journal-pages';

/** Journal and goal, as views, hovers and rows of trees hand them over. */
function askedFor(value: unknown): { readonly journal?: string; readonly goal?: string } {
  if (typeof value !== 'object' || value === null) return {};
  return {
    ...('journal' in value && typeof value.journal === 'string' ? { journal: value.journal } : {}),
    ...('goal' in value && typeof value.goal === 'string' ? { goal: value.goal } : {}),
  };
}

/** Puts the readings of a goal on the clipboard. */
async function copyReadings({ journals }: FeatureContext, journal: string, goal: string): Promise<void> {
  const open = journals.byId(journal);
  const today = open?.today();
  const progress = open && today && goalProgress(open.journal, goal, { today });
  if (!progress || !today) return;
  const table = readingsAsMarkdown(progress, { words: editorWords(), today });
  if (table === undefined) {
    void vscode.window.showInformationMessage(vscode.l10n.t('{0} has no readings yet.', progress.title));
    return;
  }
  await vscode.env.clipboard.writeText(table);
  vscode.window.setStatusBarMessage(vscode.l10n.t('The readings of {0} are copied.', progress.title), 4000);
}

/** The goal that a command is about: the one named, the only one, or the one that the person picks. */
async function chooseGoal(journal: OpenJournal, id: string | undefined): Promise<string | undefined> {
  const goals = goalsInOrder(journal);
  const named = goals.find((goal) => goal.id === id);
  if (named || goals.length < 2) return (named ?? goals[0])?.id;
  const picked = await vscode.window.showQuickPick(
    goals.map((goal) => ({ label: goal.title, description: goal.id, id: goal.id })),
    { title: vscode.l10n.t('The readings of which goal?') },
  );
  return picked?.id;
}

/** The goal page: the command that opens it, the one that copies its readings, and its return after a reload. */
export function registerGoalPage(context: FeatureContext): vscode.Disposable {
  const { journals } = context;
  const pages = new JournalPages<GoalPagePanel>('trainingJournal.goalPage');
  const adopt = (panel: vscode.WebviewPanel, shown: { readonly journal: string; readonly goal: string }) =>
    pages.add(
      panel,
      new GoalPagePanel(context, panel, shown, (goal) => copyReadings(context, shown.journal, goal)),
    );
  return vscode.Disposable.from(
    registerCommand(context, 'openGoalPage', async (asked) => {
      const { journal: id, goal = '' } = askedFor(asked);
      const journal = await chooseJournal(journals, id);
      if (!journal) return;
      const page = pages.of(journal.id);
      if (page) page.reveal(goal);
      else adopt(pages.newPanel(vscode.l10n.t('Goals: {0}', journal.title)), { journal: journal.id, goal });
    }),
    registerCommand(context, 'copyGoalTable', async (asked) => {
      const named = askedFor(asked);
      const front = pages.all().find((page) => page.isActive);
      const journal = await chooseJournal(journals, named.journal ?? front?.journal);
      const goal = journal && (await chooseGoal(journal, named.goal ?? front?.goal));
      if (journal && goal !== undefined) await copyReadings(context, journal.id, goal);
    }),
    keepPagesAlive(context, pages, readPageState, adopt),
  );
}
