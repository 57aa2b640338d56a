import * as vscode from 'vscode';
import type { NotePlace } from '../../journal/note';
import type { NoteChange } from '../../planning/note-change';
import { type EditorList, rowItem } from '../editor-list';
import { editorWords } from '../editor-words';
import type { OpenJournal, OpenJournals } from '../open-journal';
import type { Planned } from './plan-in-slices';
import { type PlanRow, planSections, planTitle, type ShownPlan } from './plan-rows';

/** What a person decided about a plan; `undefined` when they left it. */
export type PlanDecision =
  | { readonly decided: 'write'; readonly changes: readonly NoteChange[] }
  | { readonly decided: 'change'; readonly changes: readonly NoteChange[] }
  | { readonly decided: 'open'; readonly place: NotePlace };

/** What is shown, and how to make it anew. */
export interface PlanToShow {
  readonly journals: OpenJournals;
  readonly journal: OpenJournal;
  readonly planned: Planned;
  readonly planAgain: () => Promise<Planned | undefined>;
}

/** A row as the editor's list has it. */
export interface RowItem extends vscode.QuickPickItem {
  readonly row?: PlanRow;
}

const openButton = (): vscode.QuickInputButton => ({
  iconPath: new vscode.ThemeIcon('go-to-file'),
  tooltip: vscode.l10n.t('Open the line'),
});

const againButton = (): vscode.QuickInputButton => ({
  iconPath: new vscode.ThemeIcon('refresh'),
  tooltip: vscode.l10n.t('Plan again'),
});

function itemOf(row: PlanRow): RowItem {
  return { ...rowItem(row), buttons: row.place ? [openButton()] : [], row };
}

/** The editor's list, or a stand-in of a test. */
export type PlanList = EditorList<RowItem>;

/** A list over one plan, until the person decides. It plans again by itself when the notes change. */
class PlanPicker {
  readonly #picker: PlanList;
  readonly #toShow: PlanToShow;
  #planned: Planned;
  #unticked: ReadonlySet<string> = new Set();
  #withRestDays = true;
  #isPlanning = false;
  #isOutdated = false;
  #isOver = false;

  constructor(toShow: PlanToShow, list: PlanList) {
    this.#picker = list;
    this.#toShow = toShow;
    this.#planned = toShow.planned;
  }

  show(): Promise<PlanDecision | undefined> {
    const picker = this.#picker;
    picker.ignoreFocusOut = true;
    picker.matchOnDescription = true;
    picker.matchOnDetail = true;
    picker.keepScrollPosition = true;
    picker.buttons = [againButton()];
    picker.placeholder = vscode.l10n.t('Enter writes, ticks or opens the row; Escape writes nothing');
    this.#fill();
    return new Promise((resolve) => {
      const subscriptions: vscode.Disposable[] = [];
      const end = (decision: PlanDecision | undefined) => {
        if (this.#isOver) return;
        this.#isOver = true;
        for (const subscription of subscriptions) subscription.dispose();
        picker.dispose();
        resolve(decision);
      };
      subscriptions.push(
        picker.onDidHide(() => end(undefined)),
        picker.onDidAccept(() => {
          const row = (picker.selectedItems[0] ?? picker.activeItems[0])?.row;
          const decision = row && this.#accept(row);
          if (decision) end(decision);
        }),
        picker.onDidTriggerItemButton(({ item }) => {
          if (item.row?.place) end({ decided: 'open', place: item.row.place });
        }),
        picker.onDidTriggerButton(() => void this.#again()),
        this.#toShow.journals.onDidChange((changes) => {
          if (changes.some(({ journal }) => journal === this.#toShow.journal)) void this.#again(true);
        }),
      );
      picker.show();
    });
  }

  /** Does what a row says; what ends the list is handed back. */
  #accept({ id, action }: PlanRow): PlanDecision | undefined {
    // While the notes are planned again, the rows speak of words that are no longer there.
    if (this.#isPlanning) return undefined;
    switch (action.does) {
      case 'write':
        return { decided: 'write', changes: action.changes };
      case 'change':
        return { decided: 'change', changes: action.changes };
      case 'open':
        return { decided: 'open', place: action.place };
      case 'tick': {
        const unticked = new Set(this.#unticked);
        if (!unticked.delete(action.session)) unticked.add(action.session);
        this.#unticked = unticked;
        break;
      }
      case 'tick-rest-days':
        this.#withRestDays = !this.#withRestDays;
        break;
      case 'nothing':
        return undefined;
    }
    this.#fill(id);
    return undefined;
  }

  async #again(notesChanged = false): Promise<void> {
    this.#isOutdated = true;
    if (this.#isPlanning) return;
    this.#isPlanning = true;
    this.#picker.busy = true;
    try {
      while (this.#isOutdated && !this.#isOver) {
        this.#isOutdated = false;
        const planned = await this.#toShow.planAgain();
        if (planned) this.#planned = planned;
      }
    } finally {
      this.#isPlanning = false;
      if (!this.#isOver) {
        this.#picker.busy = false;
        if (notesChanged)
          this.#picker.placeholder = vscode.l10n.t('The notes have changed. This is the new plan.');
        this.#fill(this.#picker.activeItems[0]?.row?.id);
      }
    }
  }

  /** @param active The row that has the focus; the one that writes when left out or gone. */
  #fill(active = 'write'): void {
    const shown: ShownPlan = {
      journal: this.#toShow.journal.journal,
      ...this.#planned,
      unticked: this.#unticked,
      withRestDays: this.#withRestDays,
      words: editorWords(),
    };
    this.#picker.title = planTitle(shown);
    const items = planSections(shown).flatMap(({ title, rows }): RowItem[] => [
      ...(title === undefined ? [] : [{ label: title, kind: vscode.QuickPickItemKind.Separator }]),
      ...rows.map(itemOf),
    ]);
    this.#picker.items = items;
    const wanted =
      items.find(({ row }) => row?.id === active) ?? items.find(({ row }) => row?.id === 'write') ?? items[0];
    if (wanted?.row) this.#picker.activeItems = [wanted];
  }
}

/** Shows a plan in a list: all of it, or some, can be written, a rule changed, or a line opened. */
export function pickFromPlan(
  toShow: PlanToShow,
  list: PlanList = vscode.window.createQuickPick<RowItem>(),
): Promise<PlanDecision | undefined> {
  return new PlanPicker(toShow, list).show();
}
