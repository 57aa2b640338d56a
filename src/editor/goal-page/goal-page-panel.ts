import * as vscode from 'vscode';
import type { PagePlace, ToGoalPage } from '../../pages/goal-page-data';
import { rangeInNote } from '../document-ranges';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { newNonce, pageHtml } from '../page/page-html';
import { goalPageData } from './page-data';
import { readPageMessage } from './page-messages';

/** Changes are gathered this long before the page is drawn again: nobody reads a chart at every keystroke. */
const gatheringTime = 150;

/** The column that a note is opened in: one that shows a text already, so that the page stays in sight. */
function columnForNote(panel: vscode.WebviewPanel): vscode.ViewColumn {
  const other = vscode.window.visibleTextEditors.find(
    (editor) => editor.viewColumn !== undefined && editor.viewColumn !== panel.viewColumn,
  );
  return other?.viewColumn ?? vscode.ViewColumn.Beside;
}

/** The goal page of one journal. */
export class GoalPagePanel implements vscode.Disposable {
  readonly #context: FeatureContext;
  readonly #panel: vscode.WebviewPanel;
  readonly #subscriptions: vscode.Disposable[] = [];
  readonly #copy: (goal: string) => Promise<void>;
  readonly journal: string;
  #goal: string;
  /** The page said that it listens; a hidden page does not. */
  #listens = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /**
   * @param journal Id of the journal; it may not be read yet, or be gone.
   * @param goal Id of the goal to show; empty for all.
   * @param copy Puts the readings of a goal on the clipboard.
   */
  constructor(
    context: FeatureContext,
    panel: vscode.WebviewPanel,
    shown: { readonly journal: string; readonly goal: string },
    copy: (goal: string) => Promise<void>,
  ) {
    this.#context = context;
    this.#panel = panel;
    this.journal = shown.journal;
    this.#goal = shown.goal;
    this.#copy = copy;
    const { extensionUri, journals } = context;
    // A page that the editor kept has its scripts blocked until it is allowed them again.
    const scripts = vscode.Uri.joinPath(extensionUri, 'dist', 'pages');
    const styles = vscode.Uri.joinPath(extensionUri, 'media', 'pages');
    panel.webview.options = { enableScripts: true, localResourceRoots: [scripts, styles] };
    panel.iconPath = vscode.Uri.joinPath(extensionUri, 'media', 'icon.svg');
    this.#subscriptions.push(
      panel.webview.onDidReceiveMessage((message: unknown) => this.#received(message)),
      panel.onDidChangeViewState(() => {
        if (panel.visible) this.refresh();
        else this.#listens = false;
      }),
      journals.onDidChange((changes) => {
        if (changes.some((change) => change.journal.id === this.journal)) this.refresh();
      }),
    );
    panel.webview.html = pageHtml({
      script: panel.webview.asWebviewUri(vscode.Uri.joinPath(scripts, 'goal-page.js')).toString(),
      style: panel.webview.asWebviewUri(vscode.Uri.joinPath(styles, 'pages.css')).toString(),
      styleSource: panel.webview.cspSource,
      nonce: newNonce(),
      language: vscode.env.language,
      title: vscode.l10n.t('Goals'),
    });
  }

  get goal(): string {
    return this.#goal;
  }

  get isActive(): boolean {
    return this.#panel.active;
  }

  /** Brings the page to the front and shows `goal`. */
  reveal(goal: string): void {
    this.#goal = goal;
    this.#panel.reveal();
    this.refresh();
  }

  /** Draws the page again soon, when it is in sight. */
  refresh(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      this.#post();
    }, gatheringTime);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #open(): OpenJournal | undefined {
    return this.#context.journals.byId(this.journal);
  }

  #send(message: ToGoalPage): void {
    void this.#panel.webview.postMessage(message);
  }

  #post(): void {
    const open = this.#open();
    if (!this.#listens || !this.#panel.visible || !open) return;
    const data = goalPageData(open, this.#goal, editorWords(), vscode.env.language);
    this.#panel.title =
      data.goals.length === 1 && data.chosen !== '' ? (data.goals[0]?.title ?? '') : data.title;
    this.#send({ type: 'data', data });
  }

  #received(value: unknown): void {
    const message = readPageMessage(value);
    if (!message) {
      this.#context.log.warn('The goal page asked for something that it cannot ask for.');
      return;
    }
    switch (message.type) {
      case 'ready':
        this.#listens = true;
        void this.#context.journals.ready.then(() => this.#post());
        break;
      case 'choose':
        this.#goal = message.goal;
        this.#post();
        break;
      case 'open':
        void this.#openPlace(message.place);
        break;
      case 'guide':
        void vscode.commands.executeCommand('trainingJournal.openGuide', 'figures.md');
        break;
      case 'why':
        this.#sendWhy(message.goal);
        break;
      case 'copy':
        void this.#copy(message.goal);
        break;
    }
  }

  #sendWhy(goal: string): void {
    const whys = this.#open()?.journal.plan.goals.get(goal)?.whys ?? [];
    const words = whys.flatMap((why) => (why.words ? [why.words.value] : []));
    this.#send({ type: 'why', goal, words });
  }

  async #openPlace(place: PagePlace): Promise<void> {
    const open = this.#open();
    const note = open?.journal.note(place.note);
    if (!open || !note) return;
    const { start } = rangeInNote(note, place.range);
    await vscode.window.showTextDocument(open.uriOf(place.note), {
      selection: new vscode.Range(start, start),
      viewColumn: columnForNote(this.#panel),
      preview: true,
    });
  }
}
