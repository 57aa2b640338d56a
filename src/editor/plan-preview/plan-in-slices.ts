import * as vscode from 'vscode';
import { type PlanWeeksOptions, planWeeksInSlices, type WeeksPlan } from '../../planning/plan-weeks';
import type { OpenJournal, OpenJournals } from '../open-journal';
import { runInSlices } from '../run-in-slices';

/** A plan, and what it was asked with. */
export interface Planned {
  readonly options: PlanWeeksOptions;
  readonly plan: WeeksPlan;
}

/** How it is shown that planning goes on. */
export interface PlanningProgress {
  /** Planning that takes longer than so many milliseconds shows that it goes on, and can be stopped. */
  readonly after: number;
  /** Shows it until the planning has ended; what it returns is what the planning returns. */
  readonly show: (
    planning: Promise<Planned | undefined>,
    stop: () => void,
  ) => PromiseLike<Planned | undefined>;
}

const noticeWithCancel: PlanningProgress = {
  after: 400,
  show: (planning, stop) =>
    vscode.window.withProgress(
      {
        location: vscode.ProgressLocation.Notification,
        title: vscode.l10n.t('Looking for the best places'),
        cancellable: true,
      },
      (_progress, token) => {
        token.onCancellationRequested(stop);
        return planning;
      },
    ),
};

/** Changes of notes are told a moment after they are made. */
const untilTold = 150;

/** A journal that changes again and again is planned as it is after so many tries. */
const mostTries = 5;

const nextTurn = (milliseconds: number) => new Promise<void>((resolve) => setTimeout(resolve, milliseconds));

/** Plans in slices; `undefined` when it was stopped. */
async function planOnce(
  journal: OpenJournal,
  options: PlanWeeksOptions,
  token: vscode.CancellationToken,
): Promise<Planned | undefined> {
  const plan = await runInSlices(
    planWeeksInSlices(journal.journal, {
      ...options,
      // The clock, which the editor looks at, says when to give way; so every step may be the last of a slice.
      nodesPerSlice: 0,
      shouldStop: () => token.isCancellationRequested,
    }),
  );
  return plan && { options, plan };
}

/** Plans again when the notes changed meanwhile: half of the plan would speak of other words than the rest. */
async function planSteadily(
  journals: OpenJournals,
  journal: OpenJournal,
  optionsOf: (journal: OpenJournal) => PlanWeeksOptions,
  token: vscode.CancellationToken,
): Promise<Planned | undefined> {
  let changes = 0;
  const subscription = journals.onDidChange((all) => {
    if (all.some((change) => change.journal === journal)) changes += 1;
  });
  try {
    for (let tries = 1; ; tries += 1) {
      const before = changes;
      try {
        const planned = await planOnce(journal, optionsOf(journal), token);
        if (planned === undefined || changes === before || tries >= mostTries) return planned;
      } catch (error) {
        await nextTurn(untilTold);
        if (changes === before || tries >= mostTries) throw error;
      }
    }
  } finally {
    subscription.dispose();
  }
}

/**
 * Plans in slices, so that the editor goes on working, and shows a message with a way to stop it when it takes long.
 * @returns `undefined` when the person stopped it.
 */
export async function planInSlices(
  journals: OpenJournals,
  journal: OpenJournal,
  optionsOf: (journal: OpenJournal) => PlanWeeksOptions,
  progress: PlanningProgress = noticeWithCancel,
): Promise<Planned | undefined> {
  const stop = new vscode.CancellationTokenSource();
  try {
    const planning = planSteadily(journals, journal, optionsOf, stop.token);
    const isDone = await Promise.race([
      planning.then(() => true),
      nextTurn(progress.after).then(() => false),
    ]);
    return await (isDone ? planning : progress.show(planning, () => stop.cancel()));
  } finally {
    stop.dispose();
  }
}
