import type * as vscode from 'vscode';
import type { FromAnyPage } from '../../pages/page-parts';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { openBesidePage } from './open-beside-page';
import { WebPage } from './web-page';

/** What makes one kind of page of a journal different from another. */
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

/** A page of one journal in a panel. */
export class PagePanel<Message extends { readonly type: string }> implements vscode.Disposable {
  readonly #page: WebPage<Message | FromAnyPage>;

  /** @param journal Id of the journal; it may not be read yet, or be gone. */
  constructor(
    private readonly context: FeatureContext,
    private readonly panel: vscode.WebviewPanel,
    readonly journal: string,
    kind: PageKind<Message | FromAnyPage>,
  ) {
    this.#page = new WebPage(context, panel, {
      script: kind.script,
      title: kind.title,
      guide: 'figures.md',
      read: kind.read,
      concerns: (changes) => changes.some((change) => change.journal.id === journal),
      show: () => this.open && kind.show(this.open),
      answer: (message) => {
        if (message.type === 'open') {
          const { place } = message as Extract<FromAnyPage, { type: 'open' }>;
          void openBesidePage(this.open, place, panel);
        } else kind.answer(message as Exclude<Message | FromAnyPage, FromAnyPage>);
      },
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
    this.#page.reveal();
  }

  /** Draws the page again soon, when it is in sight. */
  refresh(): void {
    this.#page.refresh();
  }

  /** Draws the page again now, when it is in sight. */
  post(): void {
    this.#page.post();
  }

  /** Tells the page something. */
  send(message: object): void {
    this.#page.send(message);
  }

  dispose(): void {
    this.#page.dispose();
  }
}
