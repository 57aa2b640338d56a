import * as vscode from 'vscode';
import type { NoteChange } from '../../planning/note-change';
import { inSlices, type Steps } from '../../planning/solver/slices';
import {
  nextWeekSteps,
  type ReviewFlow,
  type ReviewFlowOptions,
  reviewFlowSteps,
} from '../../planning/week-review-flow';
import type { PlannedReview } from '../../planning/week-review-flow/review-draft';
import {
  proposalToggled,
  type ReviewProgress,
  reviewBegins,
  reviewRenewed,
  reviewStepped,
  sessionToggled,
  stepsOf,
} from '../../planning/week-review-flow/review-progress';
import { type EditorList, rowItem } from '../editor-list';
import { editorWords } from '../editor-words';
import type { OpenJournal, OpenJournals } from '../open-journal';
import { runInSlices } from '../run-in-slices';
import { say } from '../sentences';
import { type ReviewRow, reviewHint, reviewSections, reviewTitle } from './review-rows';

/** A row as the editor's list has it. */
export interface ReviewItem extends vscode.QuickPickItem {
  readonly row?: ReviewRow;
}

/** The editor's list, or a stand-in of a test. */
export type ReviewList = EditorList<ReviewItem>;

/** What a person confirmed, and how far they had come. */
export interface ConfirmedReview {
  readonly changes: readonly NoteChange[];
  readonly flow: ReviewFlow;
  readonly progress: ReviewProgress;
}

/** What is reviewed. */
export interface ReviewToShow {
  readonly journals: OpenJournals;
  readonly journal: OpenJournal;
  /** Where it goes on, when it was begun before. */
  readonly progress?: ReviewProgress;
}

function optionsOf(open: OpenJournal): ReviewFlowOptions {
  const { settings } = open;
  return {
    today: open.today(),
    zone: open.zone(),
    acceptedChance: settings.recoveryChance,
    day: settings.review.day,
    includePain: settings.review.pain,
    includeWhy: settings.review.why,
    timeOfDay: settings.timeOfDay,
    say,
  };
}

/** One list that walks through the steps of a review. It begins anew, with what was decided, when the notes change. */
class ReviewPicker {
  readonly #list: ReviewList;
  readonly #toShow: ReviewToShow;
  #progress: ReviewProgress;
  #flow: ReviewFlow | undefined;
  #planned: PlannedReview | undefined;
  /** The number of the work that is under way; what an older one finds is thrown away. */
  #work = 0;
  #isWorking = false;
  #isOver = false;
  #subscriptions: readonly vscode.Disposable[] = [];

  constructor(toShow: ReviewToShow, list: ReviewList) {
    this.#list = list;
    this.#toShow = toShow;
    this.#progress = toShow.progress ?? reviewBegins;
  }

  show(): Promise<ConfirmedReview | undefined> {
    const list = this.#list;
    list.ignoreFocusOut = true;
    list.keepScrollPosition = true;
    list.matchOnDescription = true;
    list.matchOnDetail = true;
    list.title = vscode.l10n.t('Looking back on the week');
    list.placeholder = reviewHint({ progress: this.#progress, words: editorWords() });
    return new Promise((resolve, reject) => {
      const end = (confirmed: ConfirmedReview | undefined): void => {
        if (this.#isOver) return;
        this.#leave();
        resolve(confirmed);
      };
      const run = (work: () => Promise<void>): void => {
        work().catch((error: unknown) => {
          this.#leave();
          reject(error);
        });
      };
      this.#subscriptions = [
        list.onDidHide(() => end(undefined)),
        list.onDidAccept(() => {
          const row = (list.selectedItems[0] ?? list.activeItems[0])?.row;
          // While something is worked out, the rows speak of what was before.
          if (!row || this.#isWorking || !this.#flow) return;
          if (row.action.does === 'write')
            end({ changes: row.action.changes, flow: this.#flow, progress: this.#progress });
          else if (row.action.does === 'end') end(undefined);
          else run(() => this.#accept(row));
        }),
        list.onDidTriggerButton(() => {
          if (!this.#isWorking) run(() => this.#step(-1));
        }),
        this.#toShow.journals.onDidChange((changes) => {
          if (changes.some(({ journal }) => journal === this.#toShow.journal)) run(() => this.#renew(true));
        }),
      ];
      list.show();
      run(() => this.#renew());
    });
  }

  #leave(): void {
    this.#isOver = true;
    this.#work += 1;
    for (const subscription of this.#subscriptions) subscription.dispose();
    this.#list.dispose();
  }

  async #accept({ id, action }: ReviewRow): Promise<void> {
    switch (action.does) {
      case 'next':
        return this.#step(1);
      case 'take':
        this.#progress = proposalToggled(this.#progress, action.proposal);
        break;
      case 'tick':
        this.#progress = sessionToggled(this.#progress, action.session);
        break;
      case 'tick-rest-days':
        this.#progress = { ...this.#progress, withRestDays: !this.#progress.withRestDays };
        break;
      default:
        return undefined;
    }
    this.#fill(id);
    return undefined;
  }

  async #step(by: 1 | -1): Promise<void> {
    if (!this.#flow) return;
    this.#progress = reviewStepped(this.#progress, stepsOf(this.#flow.proposals), by);
    this.#planned = undefined;
    this.#list.value = '';
    this.#list.placeholder = reviewHint({ progress: this.#progress, words: editorWords() });
    if (this.#progress.step === 'plan') await this.#plan();
    else this.#fill();
  }

  /** @returns nothing when something else has to be worked out by now */
  async #workOut<Answer>(steps: Steps<Answer>): Promise<Answer | undefined> {
    this.#work += 1;
    const mine = this.#work;
    const isOld = () => mine !== this.#work;
    this.#isWorking = true;
    this.#list.busy = true;
    try {
      return await runInSlices(inSlices(steps, { nodesPerSlice: 1, shouldStop: isOld }));
    } finally {
      if (!isOld()) {
        this.#isWorking = false;
        this.#list.busy = false;
      }
    }
  }

  /** Reads the notes as they are now. */
  async #renew(notesChanged = false): Promise<void> {
    const { journal } = this.#toShow;
    const active = this.#list.activeItems[0]?.row?.id;
    const flow = await this.#workOut(reviewFlowSteps(journal.journal, optionsOf(journal)));
    if (!flow) return;
    this.#flow = flow;
    this.#planned = undefined;
    this.#progress = reviewRenewed(this.#progress, flow.proposals);
    if (notesChanged)
      this.#list.placeholder = vscode.l10n.t('The notes have changed. This is what they say now.');
    if (this.#progress.step === 'plan') await this.#plan(active);
    else this.#fill(active);
  }

  async #plan(active?: string): Promise<void> {
    const { journal } = this.#toShow;
    if (!this.#flow) return;
    this.#fill();
    const steps = nextWeekSteps(journal.journal, this.#flow, this.#progress.taken, optionsOf(journal));
    try {
      const planned = await this.#workOut(steps);
      if (!planned) return;
      this.#planned = planned;
      this.#fill(active);
    } catch (error) {
      // The notes are no longer those that the facts were made of, and nothing has told of it yet.
      if (!(error instanceof RangeError)) throw error;
      await this.#renew(true);
    }
  }

  /** @param active The row that has the focus; the one that goes on or writes when left out or gone. */
  #fill(active?: string): void {
    if (!this.#flow || this.#isOver) return;
    const shown = {
      flow: this.#flow,
      progress: this.#progress,
      ...(this.#planned ? { planned: this.#planned } : {}),
      words: editorWords(),
    };
    const list = this.#list;
    list.title = reviewTitle(shown);
    const isFirst = stepsOf(this.#flow.proposals)[0] === this.#progress.step;
    list.buttons = isFirst ? [] : [vscode.QuickInputButtons.Back];
    const items = reviewSections(shown).flatMap(({ title, rows }): ReviewItem[] => [
      ...(title === undefined ? [] : [{ label: title, kind: vscode.QuickPickItemKind.Separator }]),
      ...rows.map((row) => ({ ...rowItem(row), row })),
    ]);
    list.items = items;
    const goesOn = ({ row }: ReviewItem) => row?.id === 'next' || row?.id === 'write';
    const wanted = items.find(({ row }) => row !== undefined && row.id === active) ?? items.find(goesOn);
    if (wanted) list.activeItems = [wanted];
  }
}

/** Walks through a review in one list. Nothing is written by it; `undefined` when the person left it. */
export function pickReview(
  toShow: ReviewToShow,
  list: ReviewList = vscode.window.createQuickPick<ReviewItem>(),
): Promise<ConfirmedReview | undefined> {
  return new ReviewPicker(toShow, list).show();
}
