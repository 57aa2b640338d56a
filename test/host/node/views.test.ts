import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { DayChange } from '../../../src/editor/day-change';
import type { OpenJournal, OpenJournalChange } from '../../../src/editor/open-journal';
import { NodeTree } from '../../../src/editor/views/node-tree';
import type { ViewNode } from '../../../src/editor/views/view-node';

const place = { journal: 'one', note: '2026-02-25.md', range: { start: 3, end: 9 } };

function session(description: string): ViewNode {
  return {
    id: 'one#today/skill',
    kind: 'session.open',
    journal: 'one',
    label: 'skill 18:30',
    description,
    tooltip: 'skill, 45 min',
    icon: 'circle-large-outline',
    accessibilityLabel: `skill 18:30, ${description}`,
    place,
    children: [],
  };
}

function group(children: readonly ViewNode[], collapsed = false): ViewNode {
  return { id: 'one#today', kind: 'group', journal: 'one', label: 'Today', collapsed, children };
}

describe('a tree of rows in the editor', () => {
  // No view of this name is contributed, so that the extension keeps its own views.
  const treeOf = (build: () => readonly ViewNode[], ready = Promise.resolve()) =>
    new NodeTree('trainingJournal.viewOfTests', ready, build);
  let tree: NodeTree | undefined;

  afterEach(() => tree?.dispose());

  it('gives each row what is seen, said, clicked and asked by menus', async () => {
    tree = treeOf(() => [group([session('planned')])]);
    const [top] = await tree.getChildren();
    assert.ok(top);
    const [row] = await tree.getChildren(top);
    assert.ok(row);
    const item = tree.getTreeItem(row);
    assert.equal(item.id, 'one#today/skill');
    assert.equal(item.label, 'skill 18:30');
    assert.equal(item.description, 'planned');
    assert.equal(item.tooltip, 'skill, 45 min');
    assert.equal(item.contextValue, 'session.open');
    assert.equal(item.accessibilityInformation?.label, 'skill 18:30, planned');
    assert.equal(item.iconPath instanceof vscode.ThemeIcon && item.iconPath.id, 'circle-large-outline');
    assert.equal(item.collapsibleState, vscode.TreeItemCollapsibleState.None);
    assert.equal(item.command?.command, 'trainingJournal.openPlace');
    assert.deepEqual(item.command?.arguments, [place]);
    assert.equal(tree.getParent(row), top);
    assert.equal(tree.getParent(top), undefined);
  });

  it('opens rows with rows below them, unless they are to be closed at first', async () => {
    tree = treeOf(() => [group([session('planned')]), { ...group([session('done')], true), id: 'two' }]);
    const states = (await tree.getChildren()).map((row) => tree?.getTreeItem(row).collapsibleState);
    assert.deepEqual(states, [
      vscode.TreeItemCollapsibleState.Expanded,
      vscode.TreeItemCollapsibleState.Collapsed,
    ]);
  });

  it('waits with its rows until there is something to show', async () => {
    let makeReady: () => void = () => undefined;
    const ready = new Promise<void>((resolve) => {
      makeReady = resolve;
    });
    let built = 0;
    tree = treeOf(() => {
      built += 1;
      return [];
    }, ready);
    const rows = tree.getChildren();
    assert.equal(built, 0);
    makeReady();
    assert.deepEqual(await rows, []);
    assert.equal(built, 1);
  });

  it('makes its rows anew when something changed, and not when nothing did', async () => {
    let built = 0;
    tree = treeOf(() => {
      built += 1;
      return [group([session(built === 1 ? 'planned' : 'done 7/10')])];
    });
    const [top] = await tree.getChildren();
    await tree.getChildren();
    assert.equal(built, 1);
    tree.refresh();
    await tree.getChildren();
    assert.equal(built, 2);
    // The editor still holds the first value of the row above.
    const [row] = await tree.getChildren(top);
    assert.equal(row?.description, 'done 7/10');
  });
});

describe('another day', () => {
  it('is told of once, whichever athlete it begins for', () => {
    const days = new Map([
      ['one', '2026-02-25'],
      ['two', '2026-02-25'],
    ]);
    const journals = {
      all: () => [...days.keys()].map((id) => ({ id, today: () => days.get(id) }) as unknown as OpenJournal),
      onDidChange: new vscode.EventEmitter<readonly OpenJournalChange[]>().event,
    };
    const dayChange = new DayChange(journals);
    let told = 0;
    dayChange.onDidChange(() => {
      told += 1;
    });
    try {
      dayChange.look();
      assert.equal(told, 0);
      days.set('two', '2026-02-26');
      dayChange.look();
      dayChange.look();
      assert.equal(told, 1);
      days.set('one', '2026-02-26');
      dayChange.look();
      assert.equal(told, 2);
    } finally {
      dayChange.dispose();
    }
  });

  it('is not told of for a journal that has just come, but for its next day', () => {
    const days = new Map<string, string>();
    const changed = new vscode.EventEmitter<readonly OpenJournalChange[]>();
    const journals = {
      all: () => [...days.keys()].map((id) => ({ id, today: () => days.get(id) }) as unknown as OpenJournal),
      onDidChange: changed.event,
    };
    const dayChange = new DayChange(journals);
    let told = 0;
    dayChange.onDidChange(() => {
      told += 1;
    });
    try {
      days.set('one', '2026-02-25');
      changed.fire([]);
      assert.equal(told, 0);
      days.set('one', '2026-02-26');
      dayChange.look();
      assert.equal(told, 1);
    } finally {
      dayChange.dispose();
    }
  });
});
