import * as vscode from 'vscode';
import type { FromGoalPage, ToGoalPage } from '../../pages/goal-page-data';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import { PagePanel } from '../page/page-panel';
import { goalPageData } from './page-data';
import { readPageMessage } from './page-messages';

/** The goal page of one journal. */
export class GoalPagePanel implements vscode.Disposable {
  readonly #page: PagePanel<FromGoalPage>;
  #goal: string;

  /**
   * @param shown Ids of the journal and of the goal to show; empty for all goals.
   * @param copy Puts the readings of a goal on the clipboard.
   */
  constructor(
    context: FeatureContext,
    panel: vscode.WebviewPanel,
    shown: { readonly journal: string; readonly goal: string },
    copy: (goal: string) => Promise<void>,
  ) {
    this.#goal = shown.goal;
    this.#page = new PagePanel<FromGoalPage>(context, panel, shown.journal, {
      script: 'goal-page',
      title: vscode.l10n.t('Goals'),
      read: readPageMessage,
      show: (open) => {
        const data = goalPageData(open, this.#goal, editorWords(), vscode.env.language);
        const isOne = data.goals.length === 1 && data.chosen !== '';
        return { title: isOne ? (data.goals[0]?.title ?? '') : data.title, message: { type: 'data', data } };
      },
      answer: (message) => {
        switch (message.type) {
          case 'choose':
            this.#goal = message.goal;
            this.#page.post();
            break;
          case 'why':
            this.#sendWhy(message.goal);
            break;
          case 'copy':
            void copy(message.goal);
            break;
        }
      },
    });
  }

  get journal(): string {
    return this.#page.journal;
  }

  get goal(): string {
    return this.#goal;
  }

  get isActive(): boolean {
    return this.#page.isActive;
  }

  /** Brings the page to the front and shows `goal`. */
  reveal(goal: string): void {
    this.#goal = goal;
    this.#page.reveal();
  }

  refresh(): void {
    this.#page.refresh();
  }

  dispose(): void {
    this.#page.dispose();
  }

  #sendWhy(goal: string): void {
    const whys = this.#page.open?.journal.plan.goals.get(goal)?.whys ?? [];
    const words = whys.flatMap((why) => (why.words ? [why.words.value] : []));
    this.#page.send({ type: 'why', goal, words } satisfies ToGoalPage);
  }
}
