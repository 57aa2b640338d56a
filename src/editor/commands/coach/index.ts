import * as vscode from 'vscode';
import type { FeatureContext } from '../../feature-context';
import { registerAddToJournalsCommand } from './add-to-journals-command';
import { registerCommentCommand } from './comment-command';
import { registerCopyWeeksCommand } from './copy-weeks-command';

/** What a coach does in the journals of several athletes. */
export function registerCoachCommands(context: FeatureContext): vscode.Disposable {
  return vscode.Disposable.from(
    registerCommentCommand(context),
    registerAddToJournalsCommand(context),
    registerCopyWeeksCommand(context),
  );
}
