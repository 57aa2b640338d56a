import * as vscode from 'vscode';
import { parseIsoDate } from '../../notation/time/iso-date';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { type CalendarSpan, calendarSpans } from './calendar-spans';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';
import { type Exported, type FileBefore, fileBefore, writeCalendar } from './write-calendar';

/** A span and a file, as another command or a key binding may hand them over. */
interface AskedExport {
  readonly first: string;
  readonly last: string;
  /** Address of the file. */
  readonly file: string;
}

function isAsked(value: unknown): value is AskedExport {
  return (
    typeof value === 'object' &&
    value !== null &&
    (['first', 'last', 'file'] as const).every(
      (name) => name in value && typeof Reflect.get(value, name) === 'string',
    )
  );
}

function spanWords(name: CalendarSpan['name']): string {
  switch (name) {
    case 'this-week':
      return vscode.l10n.t('This week');
    case 'next-week':
      return vscode.l10n.t('Next week');
    case 'four-weeks':
      return vscode.l10n.t('The next four weeks');
    case 'twelve-weeks':
      return vscode.l10n.t('The next twelve weeks');
  }
}

async function askSpan(journal: OpenJournal): Promise<CalendarSpan | undefined> {
  const { dates } = editorWords();
  const picked = await vscode.window.showQuickPick(
    calendarSpans(journal.today()).map((span) => ({
      label: spanWords(span.name),
      description: vscode.l10n.t('{0} to {1}', dates.short(span.first), dates.short(span.last)),
      span,
    })),
    { title: vscode.l10n.t('Which sessions go into the calendar?') },
  );
  return picked?.span;
}

/** Where a journal's calendar was saved the last time, kept by the editor and in no setting. */
function placeKey(journal: OpenJournal): string {
  return `calendarFile ${journal.id}`;
}

async function askPlace(journal: OpenJournal, memory: vscode.Memento): Promise<vscode.Uri | undefined> {
  const last = memory.get<string>(placeKey(journal));
  return vscode.window.showSaveDialog({
    defaultUri:
      last === undefined ? vscode.Uri.joinPath(journal.uri, 'training.ics') : vscode.Uri.parse(last),
    filters: { [vscode.l10n.t('Calendar')]: ['ics'] },
    title: vscode.l10n.t('Where is the calendar of {0} saved?', journal.title),
    saveLabel: vscode.l10n.t('Export'),
  });
}

/** Whether a file that holds something else may be written over. */
async function mayReplace(target: vscode.Uri, { contents }: FileBefore): Promise<boolean> {
  if (contents === 'this-journal' || contents === 'nothing') return true;
  const name = vscode.workspace.asRelativePath(target);
  const replace = vscode.l10n.t('Write over it');
  const answer = await vscode.window.showWarningMessage(
    contents === 'another-journal'
      ? vscode.l10n.t('{0} holds the sessions of another journal. Write over it?', name)
      : vscode.l10n.t('{0} holds something else than exported sessions. Write over it?', name),
    { modal: true },
    replace,
  );
  return answer === replace;
}

async function tellExported(target: vscode.Uri, { standing, cancelled }: Exported): Promise<void> {
  const name = vscode.workspace.asRelativePath(target);
  if (standing + cancelled === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('There is no session on these days. Nothing was written.'),
    );
    return;
  }
  const howTo = vscode.l10n.t('How to import it');
  const what =
    cancelled === 0
      ? vscode.l10n.t('{0} appointments written to {1}.', standing, name)
      : vscode.l10n.t('{0} appointments and {1} cancelled ones written to {2}.', standing, cancelled, name);
  const answer = await vscode.window.showInformationMessage(
    `${what} ${vscode.l10n.t('Import the file in your calendar; importing it again changes what is there already.')}`,
    howTo,
  );
  if (answer === howTo) await vscode.commands.executeCommand('trainingJournal.openGuide', 'calendar.md');
}

/** What a call asks for: what was handed over, or what the person chooses. */
async function askExport(journal: OpenJournal, memory: vscode.Memento, asked: unknown) {
  if (isAsked(asked)) {
    const [first, last] = [parseIsoDate(asked.first), parseIsoDate(asked.last)];
    return first && last ? { span: { first, last }, target: vscode.Uri.parse(asked.file) } : undefined;
  }
  const span = await askSpan(journal);
  const target = span && (await askPlace(journal, memory));
  return span && target && { span, target };
}

/**
 * Exports the sessions of a span as an iCalendar file, following on the one that was saved before.
 * @param memory where the place of the last export is kept
 */
export function registerCalendarCommand(context: FeatureContext, memory: vscode.Memento): vscode.Disposable {
  return registerCommand(context, 'exportCalendar', async (id, asked) => {
    const journal = await chooseJournal(context.journals, id);
    const wanted = journal && (await askExport(journal, memory, asked));
    if (!journal || !wanted) return;
    const { span, target } = wanted;
    const before = await fileBefore(journal, target);
    if (!(await mayReplace(target, before))) return;
    let exported: Exported;
    try {
      exported = await writeCalendar(journal, span, target, before);
    } catch (error) {
      if (!(error instanceof vscode.FileSystemError)) throw error;
      void vscode.window.showErrorMessage(
        vscode.l10n.t('The calendar could not be written: {0}', error.message),
      );
      return;
    }
    await memory.update(placeKey(journal), target.toString());
    // The command ends when the file is there, and does not wait for the message to be read.
    void tellExported(target, exported);
  });
}
