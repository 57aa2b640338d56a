import * as vscode from 'vscode';
import { registerCodeActions } from './code-actions';
import { registerBlockCommands } from './commands/block-command';
import { registerCalendarCommand } from './commands/calendar-command';
import { registerCoachCommands } from './commands/coach';
import { registerMeasurementCommand } from './commands/measurement-command';
import { registerNextWeekCommand } from './commands/next-week-command';
import { registerPrintMonthCommand } from './commands/print-month-command';
import { registerRearrangeCommand } from './commands/rearrange-command';
import { registerRenameCommand } from './commands/rename-command';
import { registerReturnPlanCommand } from './commands/return-plan-command';
import { registerReviewWeekCommand } from './commands/review-week-command';
import { registerCommand } from './commands/run-command';
import { registerSessionCommands } from './commands/session-commands';
import { registerShareCommands } from './commands/share-note-command';
import { registerStarterJournalCommand } from './commands/starter-journal-command';
import { registerTodayCommand } from './commands/today-command';
import { registerWeekReviewCommand } from './commands/week-review-command';
import { DayChange } from './day-change';
import { Findings } from './diagnostics';
import type { FeatureContext } from './feature-context';
import { registerGoalPage } from './goal-page-host';
import { registerGuide } from './guide';
import { KeptNotesFile } from './kept-notes-file';
import { registerLanguageFeatures } from './language';
import { registerLoadPage } from './load-page-host';
import { type PreviewExtension, previewExtension } from './markdown-preview';
import { registerGoalAddresses } from './markdown-preview/goal-address';
import { registerMonthPage } from './month-page-host';
import { registerPlaces } from './places';
import { readerFingerprint } from './reader-fingerprint';
import { registerReviewReminder } from './review-reminder';
import { registerRoster } from './roster';
import { registerStatusBar } from './status-bar';
import { registerViews } from './views';
import { WorkspaceJournals } from './workspace-journals';
import type { NoteReaderOfFolder } from './workspace-note-source';

/**
 * Starts the extension: the journals of the workspace, and every feature on top of them.
 * @param readerFor Lists and reads the notes of a folder in the fastest way that the host allows.
 * @returns what the editor's Markdown preview asks for
 */
export function activateJournal(
  extension: vscode.ExtensionContext,
  readerFor: (folder: vscode.WorkspaceFolder) => NoteReaderOfFolder,
): PreviewExtension {
  const log = vscode.window.createOutputChannel('Training Journal', { log: true });
  const { storageUri } = extension;
  const journals = new WorkspaceJournals(readerFor, log, (folder) =>
    storageUri ? new KeptNotesFile(storageUri, folder.uri, readerFingerprint) : undefined,
  );
  const days = new DayChange(journals);
  const context: FeatureContext = {
    journals,
    extensionUri: extension.extensionUri,
    log,
    onDidChangeDay: days.onDidChange,
  };
  const findings = new Findings(journals);
  extension.subscriptions.push(
    log,
    journals,
    days,
    findings,
    days.onDidChange(() => findings.refreshAll()),
    registerCodeActions(context, findings),
    registerGuide(extension.extensionUri),
    registerPlaces(context),
    registerViews(context),
    registerStatusBar(context),
    registerReviewReminder(context),
    registerLanguageFeatures(context),
    registerGoalPage(context),
    registerLoadPage(context),
    registerMonthPage(context),
    registerRoster(context, findings),
    registerPrintMonthCommand(context),
    registerSessionCommands(context),
    registerTodayCommand(context),
    registerMeasurementCommand(context),
    registerStarterJournalCommand(context),
    registerNextWeekCommand(context),
    registerRearrangeCommand(context),
    registerWeekReviewCommand(context),
    registerReviewWeekCommand(context),
    registerReturnPlanCommand(context),
    registerRenameCommand(context),
    registerShareCommands(context),
    registerCoachCommands(context),
    registerCalendarCommand(context, extension.workspaceState),
    registerBlockCommands(context),
    registerCommand(context, 'refresh', () => journals.refresh()),
    registerGoalAddresses(),
  );
  return previewExtension(context);
}
