import * as vscode from 'vscode';
import type { Journal } from '../../journal/journal';
import type { IsoWeek } from '../../notation/time/iso-week';
import {
  type BlockPlan,
  type BlockPlanOptions,
  blockChanges,
  blockInSlices,
  openBlocks,
  planBlockAgainSteps,
  planNewBlockSteps,
} from '../../planning/block';
import { DraftJournal } from '../../planning/draft-journal';
import { applyChanges } from '../apply-changes';
import { askTop, askWeeks } from '../block/block-questions';
import { type BlockRowView, blockRows } from '../block/block-rows';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { planOptions } from '../plan-preview/plan-options';
import { runInSlices } from '../run-in-slices';
import { say } from '../sentences';
import { readBlockSettings } from '../settings';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

function optionsOf(journal: OpenJournal): BlockPlanOptions {
  const { today, zone, comfortable, timeOfDay } = planOptions(journal, [], 'new');
  return {
    today,
    zone,
    ...(comfortable ? { comfortable } : {}),
    ...(timeOfDay ? { timeOfDay } : {}),
    settings: readBlockSettings(journal.uri),
  };
}

/** Plans in slices, with a message that can stop it. */
async function inSlices(steps: ReturnType<typeof planNewBlockSteps>): Promise<BlockPlan | 'stopped'> {
  return vscode.window.withProgress(
    {
      location: vscode.ProgressLocation.Notification,
      title: vscode.l10n.t('Looking for the best places'),
      cancellable: true,
    },
    (_progress, token) =>
      runInSlices(
        blockInSlices(steps, { nodesPerSlice: 1, shouldStop: () => token.isCancellationRequested }),
      ),
  );
}

interface RowItem extends vscode.QuickPickItem {
  readonly week?: IsoWeek;
}

function item({ is, icon, label, description, detail, week, picked }: BlockRowView): RowItem {
  if (is === 'heading') return { label, kind: vscode.QuickPickItemKind.Separator };
  return {
    label: icon === undefined ? label : `$(${icon}) ${label}`,
    ...(description === undefined ? {} : { description }),
    ...(detail === undefined ? {} : { detail }),
    picked: picked === true,
    ...(week ? { week: week.figures.week } : {}),
  };
}

/** A row of a list holds one line; a message holds the whole of the cautions, below the list. */
function tellCautions({ cautions }: BlockPlan): void {
  const read = vscode.l10n.t('Read the cautions');
  void vscode.window.showWarningMessage(cautions.map(say).join(' '), read).then((answer) => {
    if (answer === read) void vscode.commands.executeCommand('trainingJournal.openGuide', 'cautions.md');
  });
}

/** Shows the block; the weeks whose day notes are to be written, or `undefined` when nothing is. */
async function preview(plan: BlockPlan, journal: OpenJournal): Promise<readonly IsoWeek[] | undefined> {
  tellCautions(plan);
  const picked = await vscode.window.showQuickPick(
    blockRows(plan, journal.today(), editorWords()).map(item),
    {
      title: plan.newNote
        ? vscode.l10n.t('A block of {0} weeks', plan.weeks.length)
        : vscode.l10n.t('The block in {0}, planned again', plan.note),
      placeHolder: plan.newNote
        ? vscode.l10n.t('Enter writes the block and the day notes of the ticked weeks, Escape writes nothing')
        : vscode.l10n.t('Enter writes the day notes of the ticked weeks, Escape writes nothing'),
      canPickMany: true,
      matchOnDetail: true,
      ignoreFocusOut: true,
    },
  );
  return picked?.flatMap(({ week }) => week ?? []);
}

/** The notes as they are now: when one of them changes before the plan of them is written, nothing is. */
function asTheyAre({ journal }: OpenJournal): Journal {
  return new DraftJournal(journal).journal;
}

async function showAndWrite(
  journal: OpenJournal,
  notes: Journal,
  plan: BlockPlan,
  options: BlockPlanOptions,
): Promise<void> {
  const weeks = await preview(plan, journal);
  if (!weeks) return;
  const changes = blockChanges(notes, plan, weeks, options);
  const [first] = changes;
  if (!first) return;
  await applyChanges(journal, changes);
  // Undo goes by the note in front: with one of the new notes there, it takes all of them back.
  await vscode.window.showTextDocument(journal.uriOf(first.note));
  vscode.window.setStatusBarMessage(
    vscode.l10n.t('{0} notes written. Undo takes them back in one step.', changes.length),
    8000,
  );
}

function tellNoBlock(): void {
  const layOut = vscode.l10n.t('Lay out a block');
  void vscode.window
    .showInformationMessage(
      vscode.l10n.t('There is no block that is not over yet: no note with #block and a table of weeks.'),
      layOut,
    )
    .then((answer) => {
      if (answer === layOut) void vscode.commands.executeCommand('trainingJournal.writeBlock');
    });
}

/** Plans the block that stands by its table: the one in the active note, or the one with the earliest week. */
async function planAgain(journal: OpenJournal): Promise<void> {
  const options = optionsOf(journal);
  const notes = asTheyAre(journal);
  const blocks = openBlocks(notes, options);
  const active = vscode.window.activeTextEditor?.document.uri.toString();
  const block = blocks.find(({ note }) => journal.uriOf(note).toString() === active) ?? blocks[0];
  if (!block) return tellNoBlock();
  const plan = await inSlices(planBlockAgainSteps(notes, block, options));
  if (plan !== 'stopped') await showAndWrite(journal, notes, plan, options);
}

async function layOut(journal: OpenJournal): Promise<void> {
  const asked = await askWeeks(journal);
  if (asked === 'again') return planAgain(journal);
  const top = asked && (await askTop(journal, asked));
  if (!asked || top === undefined) return;
  const options = optionsOf(journal);
  const notes = asTheyAre(journal);
  const plan = await inSlices(planNewBlockSteps(notes, { ...options, ...asked, top }));
  if (plan !== 'stopped') await showAndWrite(journal, notes, plan, options);
}

/**
 * Lays out a block of weeks as one note with a table, and day notes on request; plans it again when its table has
 * changed. Shown first, written as one step that one undo takes back.
 */
export function registerBlockCommands(context: FeatureContext): vscode.Disposable {
  const commandFor = (name: string, run: (journal: OpenJournal) => Promise<void>) =>
    registerCommand(context, name, async (id) => {
      const journal = await chooseJournal(context.journals, id);
      if (journal) await run(journal);
    });
  return vscode.Disposable.from(commandFor('writeBlock', layOut), commandFor('planBlockAgain', planAgain));
}
