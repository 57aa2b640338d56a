import * as vscode from 'vscode';
import { type Message, valuesToSay } from '../training/finding';

/** A message of the core in the person's language. */
export function say(message: Message): string {
  return vscode.l10n.t(message.template, ...valuesToSay(message));
}
