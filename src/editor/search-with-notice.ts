import * as vscode from 'vscode';
import { runInSlices } from './run-in-slices';

/** How a search is cut into slices that the editor can stop. */
export interface StoppableSlices {
  /** The clock, which {@link runInSlices} looks at, says when to give way; so every step may be the last of a slice. */
  readonly nodesPerSlice: 0;
  readonly shouldStop: () => boolean;
}

/**
 * Looks for places in slices, so that the editor goes on working, with a notice that can stop it.
 * @param search is to end when it is told to stop, with whatever stands for that
 */
export function searchWithNotice<Answer>(
  search: (slices: StoppableSlices) => Iterator<unknown, Answer, void>,
): Thenable<Answer> {
  return vscode.window.withProgress(
    {
      location: vscode.ProgressLocation.Notification,
      title: vscode.l10n.t('Looking for the best places'),
      cancellable: true,
    },
    (_progress, token) =>
      runInSlices(search({ nodesPerSlice: 0, shouldStop: () => token.isCancellationRequested })),
  );
}
