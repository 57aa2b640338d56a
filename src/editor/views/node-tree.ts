import * as vscode from 'vscode';
import { changedRows } from './node-changes';
import type { ViewNode } from './view-node';

function collapsibleState(node: ViewNode): vscode.TreeItemCollapsibleState {
  if (node.children.length === 0) return vscode.TreeItemCollapsibleState.None;
  return node.collapsed
    ? vscode.TreeItemCollapsibleState.Collapsed
    : vscode.TreeItemCollapsibleState.Expanded;
}

/** The editor's row for `node`. */
function treeItem(node: ViewNode): vscode.TreeItem {
  const item = new vscode.TreeItem(node.label, collapsibleState(node));
  item.id = node.id;
  item.contextValue = node.kind;
  if (node.description) item.description = node.description;
  item.tooltip = node.tooltip ?? (node.description ? `${node.label}, ${node.description}` : node.label);
  if (node.icon) item.iconPath = new vscode.ThemeIcon(node.icon);
  if (node.accessibilityLabel) item.accessibilityInformation = { label: node.accessibilityLabel };
  if (node.place) {
    item.command = {
      command: 'trainingJournal.openPlace',
      title: vscode.l10n.t('Open the Note'),
      arguments: [node.place],
    };
  }
  if (node.kind === 'review') {
    item.command = {
      command: 'trainingJournal.reviewWeek',
      title: vscode.l10n.t('Review the Week and Plan the Next'),
      arguments: [node.journal],
    };
  }
  return item;
}

/**
 * A tree view of plain rows. Rows are made anew on {@link refresh}, and only the branches that differ are shown
 * again; a view that nobody sees is made anew when it is opened.
 */
export class NodeTree implements vscode.TreeDataProvider<ViewNode>, vscode.Disposable {
  readonly view: vscode.TreeView<ViewNode>;
  readonly #build: () => readonly ViewNode[];
  readonly #ready: Promise<void>;
  readonly #changed = new vscode.EventEmitter<ViewNode[] | undefined>();
  readonly #subscriptions: vscode.Disposable[];
  #roots: readonly ViewNode[] = [];
  /** Each row as it is now, and the row above it. */
  #nodes = new Map<string, { readonly node: ViewNode; readonly parent: ViewNode | undefined }>();
  /** The values by which the editor knows the rows that it has asked for. */
  readonly #known = new Map<string, ViewNode>();
  #stale = true;

  readonly onDidChangeTreeData = this.#changed.event;

  /**
   * @param ready Until it resolves the editor shows that the view is being filled.
   * @param build Makes the rows at the top, with all below them.
   */
  constructor(viewId: string, ready: Promise<void>, build: () => readonly ViewNode[]) {
    this.#build = build;
    this.#ready = ready;
    this.view = vscode.window.createTreeView(viewId, { treeDataProvider: this, showCollapseAll: true });
    this.#subscriptions = [
      this.view,
      this.#changed,
      this.view.onDidChangeVisibility(({ visible }) => {
        if (visible && this.#stale) this.#show();
      }),
    ];
  }

  /** To be called when anything changed that the rows are made of. */
  refresh(): void {
    this.#stale = true;
    if (this.view.visible) this.#show();
  }

  getTreeItem(element: ViewNode): vscode.TreeItem {
    return treeItem(this.#nodes.get(element.id)?.node ?? element);
  }

  async getChildren(element?: ViewNode): Promise<ViewNode[]> {
    if (!element) {
      await this.#ready;
      if (this.#stale) this.#take(this.#build());
    }
    const rows = element ? (this.#nodes.get(element.id)?.node.children ?? []) : this.#roots;
    for (const node of rows) this.#known.set(node.id, node);
    return [...rows];
  }

  getParent(element: ViewNode): ViewNode | undefined {
    return this.#nodes.get(element.id)?.parent;
  }

  dispose(): void {
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #show(): void {
    const before = this.#roots;
    this.#take(this.#build());
    const rows = changedRows(before, this.#roots);
    if (rows === undefined) {
      this.#changed.fire(undefined);
      return;
    }
    const known = rows.flatMap((id) => this.#known.get(id) ?? []);
    if (known.length > 0) this.#changed.fire(known);
  }

  #take(roots: readonly ViewNode[]): void {
    this.#stale = false;
    this.#roots = roots;
    this.#nodes = new Map();
    const add = (node: ViewNode, parent: ViewNode | undefined): void => {
      this.#nodes.set(node.id, { node, parent });
      for (const child of node.children) add(child, node);
    };
    for (const root of roots) add(root, undefined);
    for (const id of this.#known.keys()) if (!this.#nodes.has(id)) this.#known.delete(id);
  }
}
