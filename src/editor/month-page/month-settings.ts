import * as vscode from 'vscode';
import type { Weekday } from '../../notation/entries';
import type { Paper } from '../month-sheet/sheet-style';
import { section } from '../settings';

const starts: Readonly<Record<string, Weekday>> = { monday: 1, saturday: 6, sunday: 7 };

/** The settings of the month's calendar; values that cannot be used count as not set. */
export function readMonthSettings(scope: vscode.Uri): { readonly weekStart: Weekday; readonly paper: Paper } {
  const settings = vscode.workspace.getConfiguration(section, scope);
  return {
    weekStart: starts[settings.get<string>('month.weekStart', 'monday')] ?? 1,
    paper: settings.get<string>('month.paper') === 'letter' ? 'letter' : 'a4',
  };
}
