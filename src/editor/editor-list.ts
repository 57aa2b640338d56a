import type * as vscode from 'vscode';

/** The editor's list of rows, or a stand-in of a test. */
export type EditorList<Item extends vscode.QuickPickItem> = Pick<
  vscode.QuickPick<Item>,
  | 'activeItems'
  | 'busy'
  | 'buttons'
  | 'dispose'
  | 'ignoreFocusOut'
  | 'items'
  | 'keepScrollPosition'
  | 'matchOnDescription'
  | 'matchOnDetail'
  | 'onDidAccept'
  | 'onDidHide'
  | 'onDidTriggerButton'
  | 'onDidTriggerItemButton'
  | 'placeholder'
  | 'selectedItems'
  | 'show'
  | 'title'
  | 'value'
>;

/** The words of a row. */
interface RowWords {
  readonly icon: string;
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
}

/** A row of a list, its icon before its words. */
export function rowItem({ icon, label, description, detail }: RowWords): vscode.QuickPickItem {
  return {
    label: `$(${icon}) ${label}`,
    ...(description === undefined ? {} : { description }),
    ...(detail === undefined ? {} : { detail }),
  };
}
