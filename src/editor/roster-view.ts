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
  { journals, onDidChangeDay }: FeatureContext,
  findings: Findings,
  data: () => RosterPageData,
): vscode.Disposable {
  const tree = new NodeTree('trainingJournal.roster', journals.ready, () => rosterNodes(data()));
  return vscode.Disposable.from(
    tree,
    journals.onDidChange(() => tree.refresh()),
    findings.onDidChange(() => tree.refresh()),
    onDidChangeDay(() => tree.refresh()),
  );
}
