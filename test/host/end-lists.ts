import * as vscode from 'vscode';
import { eventually } from './scratch-journal';

/** Takes what is chosen in the list in front. */
export const accept = 'workbench.action.acceptSelectedQuickOpenItem';

/** Leaves the list in front. */
export const leave = 'workbench.action.closeQuickOpen';

/**
 * Ends the lists that a running command opens one after the other in these ways, the last of them until it is done.
 * @param untilFilled milliseconds after which a list is taken for filled: nothing tells of it
 */
export async function endLists(
  running: Thenable<unknown>,
  ways: readonly [string, ...string[]],
  untilFilled = 400,
): Promise<void> {
  let isDone = false;
  const command = Promise.resolve(running).finally(() => {
    isDone = true;
  });
  let step = 0;
  await eventually('end of the command', async () => {
    await new Promise((resolve) => setTimeout(resolve, untilFilled));
    if (isDone) return true;
    await vscode.commands.executeCommand(ways[Math.min(step, ways.length - 1)] ?? leave);
    step += 1;
    return undefined;
  });
  await command;
}
