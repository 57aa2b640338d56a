import * as vscode from 'vscode';
import type { FeatureContext } from '../feature-context';
import type { OpenJournalChange } from '../open-journal';
import { newNonce, pageHtml } from './page-html';

/** Changes are gathered this long before a page is drawn again: nobody reads a chart at every keystroke. */
const gatheringTime = 150;

/** What every page asks for, whatever it shows. */
interface AnyMessage {
  readonly type: string;
}

/** What makes one page different from another. */
export interface WebPageKind<Message extends AnyMessage> {
  /** Name of its script among the bundled pages, without ending. */
  readonly script: string;
  readonly title: string;
  /** The page of the guide that explains what it shows. */
  readonly guide: string;
  /** What a page asked for, or `undefined` when it is nothing that it may ask for. */
  readonly read: (value: unknown) => Message | undefined;
  /** Whether the page shows anything that these changes are about. */
  readonly concerns: (changes: readonly OpenJournalChange[]) => boolean;
  /** The title of the panel and what the page is told, as things are now; `undefined` when there is nothing yet. */
  readonly show: () => { readonly title: string; readonly message: object } | undefined;
  /** Answers what the page asks for, other than the guide. */
  readonly answer: (message: Message) => void;
}

/** A page in a panel: its frame, and the messages to and fro. */
export class WebPage<Message extends AnyMessage> implements vscode.Disposable {
  readonly #subscriptions: vscode.Disposable[] = [];
  /** The page said that it listens; a hidden page does not. */
  #listens = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly context: FeatureContext,
    readonly panel: vscode.WebviewPanel,
    private readonly kind: WebPageKind<Message>,
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
        if (kind.concerns(changes)) this.refresh();
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
    if (!this.#listens || !this.panel.visible) return;
    const shown = this.kind.show();
    if (!shown) return;
    this.panel.title = shown.title;
    this.send(shown.message);
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
      case 'guide':
        void vscode.commands.executeCommand('trainingJournal.openGuide', this.kind.guide);
        break;
      default:
        this.kind.answer(message);
    }
  }
}
