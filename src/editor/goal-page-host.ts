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

const viewType = 'trainingJournal.goalPage';

/** Journal and goal, as views, hovers and rows of trees hand them over. */
function askedFor(value: unknown): { readonly journal?: string; readonly goal?: string } {
  if (typeof value !== 'object' || value === null) return {};
  return {
    ...('journal' in value && typeof value.journal === 'string' ? { journal: value.journal } : {}),
    ...('goal' in value && typeof value.goal === 'string' ? { goal: value.goal } : {}),
  };
}

/** The goal page of each journal, at most one a journal. */
class GoalPages implements vscode.Disposable {
  readonly #context: FeatureContext;
  readonly #pages = new Map<string, GoalPagePanel>();

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  /** Opens the page of a journal, or brings it to the front. */
  show(journal: OpenJournal, goal: string): void {
    const page = this.#pages.get(journal.id);
    if (page) {
      page.reveal(goal);
      return;
    }
    const panel = vscode.window.createWebviewPanel(
      viewType,
      vscode.l10n.t('Goals: {0}', journal.title),
      vscode.ViewColumn.Active,
    );
    this.adopt(panel, { journal: journal.id, goal });
  }

  /** Fills a panel that is new, or that the editor kept. */
  adopt(panel: vscode.WebviewPanel, shown: { readonly journal: string; readonly goal: string }): void {
    const page = new GoalPagePanel(this.#context, panel, shown, (goal) => this.copy(shown.journal, goal));
    this.#pages.set(shown.journal, page);
    panel.onDidDispose(() => {
      page.dispose();
      if (this.#pages.get(shown.journal) === page) this.#pages.delete(shown.journal);
    });
  }

  /** The page that is in front. */
  get active(): GoalPagePanel | undefined {
    return [...this.#pages.values()].find((page) => page.isActive);
  }

  refresh(): void {
    for (const page of this.#pages.values()) page.refresh();
  }

  /** Puts the readings of a goal on the clipboard. */
  async copy(journal: string, goal: string): Promise<void> {
    const open = this.#context.journals.byId(journal);
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

  dispose(): void {
    for (const page of this.#pages.values()) page.dispose();
  }
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
  const pages = new GoalPages(context);
  const { journals } = context;
  return vscode.Disposable.from(
    pages,
    registerCommand(context, 'openGoalPage', async (asked) => {
      const { journal: id, goal } = askedFor(asked);
      const journal = await chooseJournal(journals, id);
      if (journal) pages.show(journal, goal ?? '');
    }),
    registerCommand(context, 'copyGoalTable', async (asked) => {
      const named = askedFor(asked);
      const front = pages.active;
      const journal = await chooseJournal(journals, named.journal ?? front?.journal);
      const goal = journal && (await chooseGoal(journal, named.goal ?? front?.goal));
      if (journal && goal !== undefined) await pages.copy(journal.id, goal);
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel, kept) {
        const state = readPageState(kept);
        // A page that kept nothing was closed before it was filled.
        if (state) pages.adopt(panel, state);
        else panel.dispose();
      },
    }),
    context.onDidChangeDay(() => pages.refresh()),
  );
}
