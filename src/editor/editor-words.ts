import * as vscode from 'vscode';
import { say } from './sentences';
import { type Words, wordsOf } from './words';

/** Words in the display language of the editor. */
export function editorWords(): Words {
  return wordsOf(vscode.env.language, say);
}
