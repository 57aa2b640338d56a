import * as vscode from 'vscode';
import { KeptFacts } from '../training/roster/kept-facts';
import type { Findings } from './diagnostics';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { rosterPageData } from './roster-page/page-data';
import { registerRosterPage } from './roster-page-host';
import { registerRosterView } from './roster-view';

/** The athletes of a coach, as a view and as a page, made from the same rows. */
export function registerRoster(context: FeatureContext, findings: Findings): vscode.Disposable {
  const { journals } = context;
  const kept = new KeptFacts();
  const findingsOf = (open: { readonly id: string }) => {
    const journal = journals.byId(open.id);
    return journal ? findings.of(journal) : [];
  };
  const data = () =>
    rosterPageData({ journals: journals.all(), kept, findingsOf }, editorWords(), vscode.env.language);
  return vscode.Disposable.from(
    // Before view and page are drawn again, which is a moment later.
    journals.onDidChange((changes) => {
      for (const { journal } of changes) kept.forget(journal.journal);
    }),
    registerRosterView(context, findings, data),
    registerRosterPage(context, findings, data),
  );
}
