import * as vscode from 'vscode';
import type { FeatureContext } from '../feature-context';
import { registerCompletion } from './completion';
import { registerDefinitions } from './definitions';
import { registerHover } from './hover';
import { registerSessionLenses } from './session-lens';
import { registerSymbols } from './symbols';

/** What the editor does while a note is read and written: completion, hovers, going to names, the outline. */
export function registerLanguageFeatures(context: FeatureContext): vscode.Disposable {
  return vscode.Disposable.from(
    registerCompletion(context),
    registerHover(context),
    registerDefinitions(context),
    registerSymbols(context),
    registerSessionLenses(context),
  );
}
