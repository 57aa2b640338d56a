import * as vscode from 'vscode';
import type { RosterPageData } from '../pages/roster-page-data';
import type { Findings } from './diagnostics';
import type { FeatureContext } from './feature-context';
import { NodeTree } from './views/node-tree';
import { rosterNodes } from './views/roster-nodes';

/**
 * The view of the athletes of a coach, which is there where a workspace has several journals.
 * @param data what the page of the athletes shows now
 */
export function registerRosterView(
  { journals }: FeatureContext,
  findings: Findings,
  data: () => RosterPageData,
): vscode.Disposable {
  const tree = new NodeTree('trainingJournal.roster', journals.ready, () => rosterNodes(data()));
  let soon: ReturnType<typeof setTimeout> | undefined;
  return vscode.Disposable.from(
    tree,
    // Findings change with the notes and with the day, one journal after the other: the rows are made once for all.
    findings.onDidChange(() => {
      soon ??= setTimeout(() => {
        soon = undefined;
        tree.refresh();
      });
    }),
    { dispose: () => clearTimeout(soon) },
  );
}
