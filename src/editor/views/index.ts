import * as vscode from 'vscode';
import { addWeeks, type IsoWeek, isoWeekOf } from '../../notation/time/iso-week';
import { overdueSessions } from '../../training/due-sessions';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournals } from '../open-journal';
import type { Words } from '../words';
import { dueNodes } from './due-nodes';
import { goalNodes } from './goal-nodes';
import { NodeTree } from './node-tree';
import { type ViewContext, viewContext } from './view-context';
import { weekNodes } from './week-nodes';

/** How many sessions are overdue in all journals, as the badge says it; no badge when there is none. */
function overdueBadge(journals: OpenJournals): vscode.ViewBadge | undefined {
  const value = journals
    .all()
    .reduce((total, open) => total + overdueSessions(open.journal, open.today()).length, 0);
  if (value === 0) return undefined;
  return {
    value,
    tooltip:
      value === 1 ? vscode.l10n.t('1 session is overdue') : vscode.l10n.t('{0} sessions are overdue', value),
  };
}

/** The week that the week view shows: the current one until the person turns the page. */
class ShownWeek {
  readonly #journals: OpenJournals;
  /** `undefined` for the current week, whichever that is. */
  #chosen: IsoWeek | undefined;

  constructor(journals: OpenJournals) {
    this.#journals = journals;
  }

  of(context: Pick<ViewContext, 'today'>): IsoWeek {
    return this.#chosen ?? isoWeekOf(context.today);
  }

  /** The week in which the first journal is today. */
  get current(): IsoWeek | undefined {
    const [first] = this.#journals.all();
    return first && isoWeekOf(first.today());
  }

  get shown(): IsoWeek | undefined {
    return this.#chosen ?? this.current;
  }

  get isCurrent(): boolean {
    return this.#chosen === undefined;
  }

  turn(weeks: number): void {
    const { shown, current } = this;
    if (shown === undefined) return;
    const next = addWeeks(shown, weeks);
    this.#chosen = next === current ? undefined : next;
  }

  turnBack(): void {
    this.#chosen = undefined;
  }
}

/** Resolves when something is read that can be shown; the rest of a large journal comes in behind it. */
function firstReading(journals: OpenJournals): Promise<void> {
  const firstChange = new Promise<void>((resolve) => {
    const subscription = journals.onDidChange(() => {
      subscription.dispose();
      resolve();
    });
  });
  return Promise.race([journals.ready, firstChange]);
}

class Views implements vscode.Disposable {
  readonly #journals: OpenJournals;
  readonly #words: Words = editorWords();
  readonly #week: ShownWeek;
  readonly #due: NodeTree;
  readonly #goals: NodeTree;
  readonly #weekTree: NodeTree;
  readonly #subscriptions: vscode.Disposable[];

  constructor({ journals, onDidChangeDay, log }: FeatureContext) {
    this.#journals = journals;
    this.#week = new ShownWeek(journals);
    const ready = firstReading(journals);
    this.#due = new NodeTree('trainingJournal.due', ready, () => dueNodes(this.#contexts()));
    this.#goals = new NodeTree('trainingJournal.goals', ready, () => goalNodes(this.#contexts()));
    this.#weekTree = new NodeTree('trainingJournal.week', ready, () =>
      weekNodes(this.#contexts(), (context) => this.#week.of(context)),
    );
    this.#subscriptions = [
      this.#due,
      this.#goals,
      this.#weekTree,
      journals.onDidChange(() => this.#refresh()),
      onDidChangeDay(() => this.#refresh()),
      this.#weekCommand('previousWeek', () => this.#week.turn(-1)),
      this.#weekCommand('thisWeek', () => this.#week.turnBack()),
      this.#weekCommand('nextWeek', () => this.#week.turn(1)),
    ];
    ready.then(
      () => {
        void vscode.commands.executeCommand('setContext', 'trainingJournal.ready', true);
        this.#refresh();
      },
      (error: unknown) => log.error(`The views cannot be filled: ${String(error)}`),
    );
  }

  dispose(): void {
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #contexts(): readonly ViewContext[] {
    return this.#journals.all().map((open) => viewContext(open, this.#words));
  }

  #weekCommand(name: string, turn: () => void): vscode.Disposable {
    return vscode.commands.registerCommand(`trainingJournal.${name}`, () => {
      turn();
      this.#weekTree.refresh();
      this.#describeWeek();
    });
  }

  #refresh(): void {
    for (const tree of [this.#due, this.#goals, this.#weekTree]) tree.refresh();
    this.#due.view.badge = overdueBadge(this.#journals);
    this.#describeWeek();
    void vscode.commands.executeCommand(
      'setContext',
      'trainingJournal.hasJournal',
      this.#journals.all().length > 0,
    );
    void vscode.commands.executeCommand(
      'setContext',
      'trainingJournal.hasSeveral',
      this.#journals.all().length > 1,
    );
  }

  #describeWeek(): void {
    this.#weekTree.view.description = this.#week.shown ?? '';
    void vscode.commands.executeCommand('setContext', 'trainingJournal.isOtherWeek', !this.#week.isCurrent);
  }
}

/** The views of what is due, of the goals and of the week, with the commands that turn the week. */
export function registerViews(context: FeatureContext): vscode.Disposable {
  return new Views(context);
}
