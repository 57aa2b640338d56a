import * as vscode from 'vscode';
import type { Journal } from '../../journal/journal';
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
import { pickFromBlock } from '../block/block-list';
import { askTop, askWeeks } from '../block/block-questions';
import { canTick } from '../block/block-rows';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { planOptions } from '../plan-preview/plan-options';
import { searchWithNotice } from '../search-with-notice';
import { say } from '../sentences';
import { readBlockSettings } from '../settings';
import { showWritten } from '../show-written';
import { tellCautions } from '../tell-cautions';
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

/** Looks for the places of a block's sessions. */
function search(steps: ReturnType<typeof planNewBlockSteps>): Thenable<BlockPlan | 'stopped'> {
  return searchWithNotice((slices) => blockInSlices(steps, slices));
}

/** Says that the notes follow the table, and what of it they cannot follow. */
function tellNothing({ warnings }: BlockPlan): void {
  const text = vscode.l10n.t('The day notes say what the table says. There is nothing to change.');
  void vscode.window.showInformationMessage([text, ...warnings.map((one) => `${say(one)}.`)].join(' '));
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
  if (!plan.newNote && !plan.weeks.some(canTick)) {
    tellNothing(plan);
    return;
  }
  tellCautions(plan.cautions);
  const weeks = await pickFromBlock(plan);
  if (!weeks) return;
  const changes = blockChanges(notes, plan, weeks, options);
  const [first] = changes;
  if (!first) return;
  await applyChanges(journal, changes);
  await showWritten(
    journal.uriOf(first.note),
    changes.length === 1
      ? vscode.l10n.t('1 note written. Undo takes it back in one step.')
      : vscode.l10n.t('{0} notes written. Undo takes them back in one step.', changes.length),
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
  const plan = await search(planBlockAgainSteps(notes, block, options));
  if (plan !== 'stopped') await showAndWrite(journal, notes, plan, options);
}

async function layOut(journal: OpenJournal): Promise<void> {
  const asked = await askWeeks(journal);
  if (asked === 'again') return planAgain(journal);
  const top = asked && (await askTop(journal, asked));
  if (!asked || top === undefined) return;
  const options = optionsOf(journal);
  const notes = asTheyAre(journal);
  const plan = await search(planNewBlockSteps(notes, { ...options, ...asked, top }));
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
