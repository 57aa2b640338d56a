import * as vscode from 'vscode';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { BlockPlan } from '../../planning/block';
import { editorWords } from '../editor-words';
import { type BlockRowView, blockRows, canTick, tickedAtFirst } from './block-rows';

interface RowItem extends vscode.QuickPickItem {
  readonly row?: BlockRowView;
}

function itemOf(row: BlockRowView): RowItem {
  const { is, icon, label, description, detail } = row;
  if (is === 'heading') return { label, kind: vscode.QuickPickItemKind.Separator };
  return {
    row,
    label: icon === undefined ? label : `$(${icon}) ${label}`,
    ...(description === undefined ? {} : { description }),
    ...(detail === undefined ? {} : { detail }),
    alwaysShow: is === 'write',
  };
}

/** Shows a block in a list; the weeks whose day notes are to be written, or `undefined` when nothing is. */
export function pickFromBlock(plan: BlockPlan): Promise<readonly IsoWeek[] | undefined> {
  const list = vscode.window.createQuickPick<RowItem>();
  const ticked = new Set(tickedAtFirst(plan));
  list.title = plan.newNote
    ? vscode.l10n.t('A block of {0} weeks', plan.weeks.length)
    : vscode.l10n.t('The block planned again by its table');
  list.placeholder = vscode.l10n.t('Enter writes or ticks the row; Escape writes nothing');
  list.ignoreFocusOut = true;
  list.matchOnDescription = true;
  list.matchOnDetail = true;
  list.keepScrollPosition = true;
  const fill = (active?: IsoWeek) => {
    const items = blockRows({ plan, ticked, words: editorWords() }).map(itemOf);
    list.items = items;
    const wanted = items.find(({ row }) =>
      active === undefined ? row?.is === 'write' : row?.week === active,
    );
    if (wanted) list.activeItems = [wanted];
  };
  fill();
  return new Promise((resolve) => {
    list.onDidAccept(() => {
      const row = (list.selectedItems[0] ?? list.activeItems[0])?.row;
      if (row?.is === 'write') {
        resolve([...ticked].sort());
        list.hide();
      }
      const week = plan.weeks.find(({ figures }) => row?.is === 'week' && figures.week === row.week);
      if (!week || !canTick(week)) return;
      if (!ticked.delete(week.figures.week)) ticked.add(week.figures.week);
      fill(week.figures.week);
    });
    list.onDidHide(() => {
      resolve(undefined);
      list.dispose();
    });
    list.show();
  });
}
