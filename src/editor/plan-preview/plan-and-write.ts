import * as vscode from 'vscode';
import type { NotePlace } from '../../journal/note';
import { changeState } from '../../planning/change-outcome';
import type { NoteChange } from '../../planning/note-change';
import type { PlanWeeksOptions, WeeksPlan } from '../../planning/plan-weeks';
import { applyChanges, StaleChangeError } from '../apply-changes';
import { rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { say } from '../sentences';
import { tellOfNewPlan } from '../unfinished-changes';
import { planInSlices } from './plan-in-slices';
import { type PlanList, pickFromPlan } from './plan-picker';

/** What is planned, and what is said about it. */
export interface AskedPlan {
  /** The options on the day it is, with the settings and notes as they are. */
  readonly optionsOf: (journal: OpenJournal) => PlanWeeksOptions;
  /** Said when there is nothing to write and nothing stands in the way. */
  readonly nothingToDo: (plan: WeeksPlan) => string;
  /** Starts it again, for the same journal. */
  readonly again: (journal: OpenJournal) => void;
}

/** How long it takes at the most until a note that was written is read again. */
const tries = 40;
const pause = 50;

async function readBack({ journal }: OpenJournal, changes: readonly NoteChange[]): Promise<void> {
  const isRead = (change: NoteChange) => changeState(change, journal.file(change.note)?.text) === 'made';
  for (let attempt = 0; attempt < tries && !changes.every(isRead); attempt += 1)
    await new Promise((resolve) => setTimeout(resolve, pause));
}

/** Opens a line that stands in the way, and offers to plan again once it is changed. */
async function openLine(
  journal: OpenJournal,
  place: NotePlace,
  plan: WeeksPlan,
  again: AskedPlan['again'],
): Promise<void> {
  const note = journal.journal.file(place.note);
  if (!note) return;
  await vscode.window.showTextDocument(journal.uriOf(place.note), {
    selection: rangeInNote(note, place.range),
    preview: true,
  });
  const planAgain = vscode.l10n.t('Plan again');
  const text = plan.conflict
    ? vscode.l10n.t('{0}. Change a line, then plan again.', say(plan.conflict.sentence))
    : vscode.l10n.t('Change the line, then plan again.');
  // The command ends here; the message waits for the person.
  void vscode.window.showInformationMessage(text, planAgain).then((answer) => {
    if (answer === planAgain) again(journal);
  });
}

function isEmpty({ changes, leftOut, conflict }: WeeksPlan): boolean {
  return changes.length === 0 && leftOut.length === 0 && !conflict;
}

/**
 * Plans, shows the plan, and writes what the person keeps of it as one step that one undo takes back. A rule that they
 * change is a step of its own, after which it is planned again.
 * @param createList The editor's own list when left out.
 * @returns the changes that were written, when there were any.
 */
export async function planAndWrite(
  { journals }: Pick<FeatureContext, 'journals'>,
  journal: OpenJournal,
  { optionsOf, nothingToDo, again }: AskedPlan,
  createList?: () => PlanList,
): Promise<readonly NoteChange[] | undefined> {
  const planAgain = () => planInSlices(journals, journal, optionsOf);
  for (;;) {
    const planned = await planAgain();
    if (!planned) return undefined;
    const { plan } = planned;
    if (isEmpty(plan)) {
      void vscode.window.showInformationMessage(nothingToDo(plan));
      return undefined;
    }
    const decision = await pickFromPlan({ journals, journal, planned, planAgain }, createList?.());
    switch (decision?.decided) {
      case undefined:
        return undefined;
      case 'open':
        await openLine(journal, decision.place, plan, again);
        return undefined;
      case 'change':
        await applyChanges(journal, decision.changes);
        await readBack(journal, decision.changes);
        vscode.window.setStatusBarMessage(
          vscode.l10n.t('Changed {0}, and planned again.', decision.changes[0]?.note ?? ''),
          8000,
        );
        break;
      case 'write':
        try {
          await applyChanges(journal, decision.changes);
          return decision.changes;
        } catch (error) {
          if (!(error instanceof StaleChangeError)) throw error;
          // The list is shown again, with a plan for the notes as they are now.
          await tellOfNewPlan();
        }
    }
  }
}
