import * as vscode from 'vscode';
import type { FeatureContext } from '../feature-context';

/** A page that is one of its kind for a journal. */
export interface JournalPage {
  /** Id of the journal; empty for a page of all journals. */
  readonly journal: string;
  refresh(): void;
  dispose(): void;
}

/** The pages of one kind, at most one a journal. */
export class JournalPages<Page extends JournalPage> implements vscode.Disposable {
  readonly #pages = new Map<string, Page>();

  constructor(readonly viewType: string) {}

  of(journal: string): Page | undefined {
    return this.#pages.get(journal);
  }

  all(): readonly Page[] {
    return [...this.#pages.values()];
  }

  newPanel(title: string): vscode.WebviewPanel {
    return vscode.window.createWebviewPanel(this.viewType, title, vscode.ViewColumn.Active);
  }

  /** Keeps a page as long as its panel is open. */
  add(panel: vscode.WebviewPanel, page: Page): void {
    this.#pages.set(page.journal, page);
    panel.onDidDispose(() => {
      page.dispose();
      if (this.#pages.get(page.journal) === page) this.#pages.delete(page.journal);
    });
  }

  refresh(): void {
    for (const page of this.#pages.values()) page.refresh();
  }

  dispose(): void {
    for (const page of this.#pages.values()) page.dispose();
  }
}

/**
 * Lets pages live on: those that the editor kept over a reload are filled again, and all are drawn anew on a new day.
 * @param read What a page has kept; `undefined` for nothing that it can have kept.
 * @param adopt Fills a panel.
 */
export function keepPagesAlive<State>(
  context: FeatureContext,
  pages: JournalPages<JournalPage>,
  read: (kept: unknown) => State | undefined,
  adopt: (panel: vscode.WebviewPanel, state: State) => void,
): vscode.Disposable {
  return vscode.Disposable.from(
    pages,
    vscode.window.registerWebviewPanelSerializer(pages.viewType, {
      async deserializeWebviewPanel(panel, kept) {
        const state = read(kept);
        // A page that kept nothing was closed before it was filled.
        if (state) adopt(panel, state);
        else panel.dispose();
      },
    }),
    context.onDidChangeDay(() => pages.refresh()),
  );
}
