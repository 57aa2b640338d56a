import * as vscode from 'vscode';
import { IncompleteChangeError, StaleChangeError } from '../apply-changes';
import type { FeatureContext } from '../feature-context';
import { tellOfStale, tellOfUnfinished } from '../unfinished-changes';

/**
 * Registers a command whose refusals are told to the person in words, and whose faults go to the log.
 * @param again What plans the change again when notes have changed meanwhile; the command itself when left out.
 */
export function registerCommand(
  context: Pick<FeatureContext, 'log'>,
  name: string,
  run: (...args: unknown[]) => Promise<unknown>,
  again?: () => unknown,
): vscode.Disposable {
  const command = `trainingJournal.${name}`;
  const logged = (error: unknown) =>
    context.log.error(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return vscode.commands.registerCommand(command, async (...args: unknown[]) => {
    try {
      return await run(...args);
    } catch (error) {
      // The command ends here; the message waits for the person.
      if (error instanceof StaleChangeError)
        tellOfStale(error, again ?? (() => vscode.commands.executeCommand(command, ...args))).catch(logged);
      else if (error instanceof IncompleteChangeError) tellOfUnfinished(error).catch(logged);
      else {
        logged(error);
        throw error;
      }
      return undefined;
    }
  });
}
