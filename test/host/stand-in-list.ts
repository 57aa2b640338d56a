import assert from 'node:assert/strict';
import * as vscode from 'vscode';

/** A list that a test reads and answers as a person would. */
export class StandInList<Item extends vscode.QuickPickItem> {
  activeItems: readonly Item[] = [];
  selectedItems: readonly Item[] = [];
  items: readonly Item[] = [];
  buttons: readonly vscode.QuickInputButton[] = [];
  busy = false;
  ignoreFocusOut = false;
  keepScrollPosition = false;
  matchOnDescription = false;
  matchOnDetail = false;
  placeholder: string | undefined;
  title: string | undefined;
  value = '';
  isOpen = false;
  readonly #accepted = new vscode.EventEmitter<void>();
  readonly #hidden = new vscode.EventEmitter<void>();
  readonly #button = new vscode.EventEmitter<vscode.QuickInputButton>();
  readonly #itemButton = new vscode.EventEmitter<vscode.QuickPickItemButtonEvent<Item>>();
  readonly onDidAccept = this.#accepted.event;
  readonly onDidHide = this.#hidden.event;
  readonly onDidTriggerButton = this.#button.event;
  readonly onDidTriggerItemButton = this.#itemButton.event;

  show(): void {
    this.isOpen = true;
  }

  dispose(): void {
    this.isOpen = false;
  }

  /** Rows under a heading, as they are read. */
  under(heading: string): readonly string[] {
    const from = this.items.findIndex(
      ({ label, kind }) => kind === vscode.QuickPickItemKind.Separator && label === heading,
    );
    const rows = from < 0 ? [] : this.items.slice(from + 1);
    const end = rows.findIndex(({ kind }) => kind === vscode.QuickPickItemKind.Separator);
    return (end < 0 ? rows : rows.slice(0, end)).map(({ label }) => label);
  }

  /** Presses Enter on the row, the one with the focus when none is named. */
  accept(words?: string): void {
    const row =
      words === undefined ? this.activeItems[0] : this.items.find(({ label }) => label.includes(words));
    assert.ok(row, `${words} is none of ${this.items.map(({ label }) => label).join('\n')}`);
    this.selectedItems = [row];
    this.activeItems = [row];
    this.#accepted.fire();
  }

  escape(): void {
    this.#hidden.fire();
  }

  /** Presses the button beside the title. */
  pressButton(): void {
    const [button] = this.buttons;
    assert.ok(button);
    this.#button.fire(button);
  }

  openLineOf(words: string): void {
    const item = this.items.find(({ label }) => label.includes(words));
    const [button] = item?.buttons ?? [];
    assert.ok(item && button);
    this.#itemButton.fire({ item, button });
  }
}
