import type * as vscode from 'vscode';
import type { OpenJournals } from './open-journal';

/** What every feature of the editor is given. */
export interface FeatureContext {
  readonly journals: OpenJournals;
  /** Where the extension's own files lie. */
  readonly extensionUri: vscode.Uri;
  readonly log: vscode.LogOutputChannel;
  /** Fires when another day begins for one of the athletes. */
  readonly onDidChangeDay: vscode.Event<void>;
}
