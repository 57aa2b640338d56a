import * as vscode from 'vscode';
import { IncompleteChangeError, StaleChangeError } from '../apply-changes';
import type { FeatureContext } from '../feature-context';

/** Registers a command whose refusals are told to the person in words, and whose faults go to the log. */
export function registerCommand(
  context: FeatureContext,
  name: string,
  run: (...args: unknown[]) => Promise<unknown>,
): vscode.Disposable {
  return vscode.commands.registerCommand(`trainingJournal.${name}`, async (...args: unknown[]) => {
    try {
      return await run(...args);
    } catch (error) {
      if (error instanceof StaleChangeError || error instanceof IncompleteChangeError) {
        void vscode.window.showWarningMessage(error.message);
        return undefined;
      }
      context.log.error(
        `${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
      );
      throw error;
    }
  });
}
