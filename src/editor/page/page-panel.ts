import * as vscode from 'vscode';
import type { FromAnyPage, PagePlace } from '../../pages/page-parts';
import { rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { newNonce, pageHtml } from './page-html';

/** Changes are gathered this long before a page is drawn again: nobody reads a chart at every keystroke. */
const gatheringTime = 150;

/** The page of the guide that explains what pages show. */
const guideToFigures = 'figures.md';

/** What makes one kind of page different from another. */
export interface PageKind<Message> {
  /** Name of its script among the bundled pages, without ending. */
  readonly script: string;
  readonly title: string;
  /** What a page asked for, or `undefined` when it is nothing that it may ask for. */
  readonly read: (value: unknown) => Message | undefined;
  /** The title of the panel and what the page is told, as the journal is now. */
  readonly show: (open: OpenJournal) => { readonly title: string; readonly message: object };
  /** Answers what only this kind of page asks for. */
  readonly answer: (message: Exclude<Message, FromAnyPage>) => void;
}

/** The column that a note is opened in: one that shows a text already, so that the page stays in sight. */
function columnForNote(panel: vscode.WebviewPanel): vscode.ViewColumn {
  const other = vscode.window.visibleTextEditors.find(
    (editor) => editor.viewColumn !== undefined && editor.viewColumn !== panel.viewColumn,
  );
  return other?.viewColumn ?? vscode.ViewColumn.Beside;
}

/** A page of one journal in a panel: its frame, and the messages to and fro. */
export class PagePanel<Message extends { readonly type: string }> implements vscode.Disposable {
  readonly #subscriptions: vscode.Disposable[] = [];
  /** The page said that it listens; a hidden page does not. */
  #listens = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** @param journal Id of the journal; it may not be read yet, or be gone. */
  constructor(
    private readonly context: FeatureContext,
    private readonly panel: vscode.WebviewPanel,
    readonly journal: string,
    private readonly kind: PageKind<Message | FromAnyPage>,
  ) {
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
      script: panel.webview.asWebviewUri(vscode.Uri.joinPath(scripts, `${kind.script}.js`)).toString(),
      style: panel.webview.asWebviewUri(vscode.Uri.joinPath(styles, 'pages.css')).toString(),
      styleSource: panel.webview.cspSource,
      nonce: newNonce(),
      language: vscode.env.language,
      title: kind.title,
    });
  }

  get isActive(): boolean {
    return this.panel.active;
  }

  /** The journal, once it is read. */
  get open(): OpenJournal | undefined {
    return this.context.journals.byId(this.journal);
  }

  /** Brings the page to the front. */
  reveal(): void {
    this.panel.reveal();
    this.refresh();
  }

  /** Draws the page again soon, when it is in sight. */
  refresh(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      this.post();
    }, gatheringTime);
  }

  /** Draws the page again now, when it is in sight. */
  post(): void {
    const { open } = this;
    if (!this.#listens || !this.panel.visible || !open) return;
    const { title, message } = this.kind.show(open);
    this.panel.title = title;
    this.send(message);
  }

  /** Tells the page something. */
  send(message: object): void {
    void this.panel.webview.postMessage(message);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #received(value: unknown): void {
    const message = this.kind.read(value);
    if (!message) {
      this.context.log.warn(`${this.kind.script} asked for something that it cannot ask for.`);
      return;
    }
    switch (message.type) {
      case 'ready':
        this.#listens = true;
        void this.context.journals.ready.then(() => this.post());
        break;
      case 'open':
        void this.#openPlace((message as Extract<FromAnyPage, { type: 'open' }>).place);
        break;
      case 'guide':
        void vscode.commands.executeCommand('trainingJournal.openGuide', guideToFigures);
        break;
      default:
        this.kind.answer(message as Exclude<Message | FromAnyPage, FromAnyPage>);
    }
  }

  async #openPlace(place: PagePlace): Promise<void> {
    const { open } = this;
    const note = open?.journal.note(place.note);
    if (!open || !note) return;
    const { start } = rangeInNote(note, place.range);
    await vscode.window.showTextDocument(open.uriOf(place.note), {
      selection: new vscode.Range(start, start),
      viewColumn: columnForNote(this.panel),
      preview: true,
    });
  }
}
