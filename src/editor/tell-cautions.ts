import * as vscode from 'vscode';
import type { Message } from '../training/finding';
import { say } from './sentences';

/** A row of a list holds one line; a message holds the whole of the cautions, below the list. */
export function tellCautions(cautions: readonly Message[]): void {
  const read = vscode.l10n.t('Read the cautions');
  void vscode.window.showWarningMessage(cautions.map(say).join(' '), read).then((answer) => {
    if (answer === read) void vscode.commands.executeCommand('trainingJournal.openGuide', 'cautions.md');
  });
}
