import * as vscode from 'vscode';
import { dayNumber } from '../../notation/time/iso-date';
import { newDayNoteText, usualLineEnding } from '../../planning/day-note';
import { newDayNotePath, noteForDay } from '../../planning/day-note-path';
import { applyChanges } from '../apply-changes';
import type { FeatureContext } from '../feature-context';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

/** Opens today's note, creating it when there is none yet. */
export function registerTodayCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'openToday', async (id) => {
    const open = await chooseJournal(context.journals, id);
    if (!open) return;
    const today = open.today();
    const existing = noteForDay(open.journal, today) ?? open.journal.notesOf(dayNumber(today))[0];
    const path = existing?.path ?? newDayNotePath(open.journal, today);
    if (!existing)
      await applyChanges(open, [
        { kind: 'create', note: path, text: newDayNoteText(today, [], usualLineEnding(open.journal)) },
      ]);
    const document = await vscode.workspace.openTextDocument(open.uriOf(path));
    const editor = await vscode.window.showTextDocument(document);
    if (existing) return;
    const end = document.lineAt(document.lineCount - 1).range.end;
    editor.selection = new vscode.Selection(end, end);
  });
}
