import * as vscode from 'vscode';
import type { NotePath } from '../../journal/note';
import { addDays, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { type NextWeek, planNextWeek } from '../../planning/next-week';
import type { NoteChange } from '../../planning/note-change';
import type { PlannedSession } from '../../planning/plan-weeks';
import { minutesInWords } from '../../training/wording';
import { applyChanges } from '../apply-changes';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { say } from '../sentences';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

interface NoteChoice extends vscode.QuickPickItem {
  readonly change?: NoteChange;
}

function dateOfNote(path: NotePath): string {
  return path.slice(path.lastIndexOf('/') + 1).slice(0, 10);
}

function sessionWords(session: PlannedSession): string {
  const time = session.start === undefined ? '' : `${formatTime(session.start)} `;
  const goal = session.goal === undefined ? '' : vscode.l10n.t(' for {0}', session.goal);
  return `${time}${session.kind}${goal}`;
}

/** What one day's note gains: its sessions with their reasons, or nothing on a day of rest. */
function choiceFor(change: NoteChange, plan: NextWeek, journal: OpenJournal): NoteChoice {
  const date = dateOfNote(change.note);
  const sessions = plan.placed.filter((session) => session.date === date);
  const what = sessions.length === 0 ? vscode.l10n.t('rest day') : sessions.map(sessionWords).join(', ');
  const minutes = sessions.reduce((total, session) => total + session.minutes, 0);
  const where = change.kind === 'create' ? vscode.l10n.t('new note') : vscode.l10n.t('added to the note');
  return {
    label: `${editorWords().dates.short(date as IsoDate)}: ${what}`,
    description: minutes === 0 ? where : `${minutesInWords(minutes)}, ${where}`,
    ...(sessions.length === 0 ? {} : { detail: sessions.map((session) => say(session.reason)).join('; ') }),
    picked: true,
    buttons:
      change.kind === 'edit'
        ? [{ iconPath: new vscode.ThemeIcon('go-to-file'), tooltip: journal.uriOf(change.note).path }]
        : [],
    change,
  };
}

/** What found no place, below the notes and not to be ticked. */
function leftOutRows(plan: NextWeek): NoteChoice[] {
  if (plan.leftOut.length === 0) return [];
  return [
    { label: vscode.l10n.t('Left out'), kind: vscode.QuickPickItemKind.Separator },
    ...plan.leftOut.map(({ kind, goal, why }) => ({
      label: `$(circle-slash) ${kind}${goal === undefined ? '' : vscode.l10n.t(' for {0}', goal)}`,
      detail: say(why),
    })),
  ];
}

function titleOf(plan: NextWeek): string {
  const first = isoDate(mondayOf(plan.week));
  const placed = vscode.l10n.t('{0} sessions placed', plan.placed.length);
  const left =
    plan.leftOut.length === 0
      ? vscode.l10n.t('nothing left out')
      : vscode.l10n.t('{0} left out', plan.leftOut.length);
  return vscode.l10n.t(
    '{0} to {1}: {2}, {3}',
    editorWords().dates.short(first),
    editorWords().dates.short(addDays(first, 6)),
    placed,
    left,
  );
}

/** Shows what would be written, a row a note, all ticked; resolves to what the person keeps. */
async function preview(plan: NextWeek, journal: OpenJournal): Promise<readonly NoteChange[] | undefined> {
  const rows: NoteChoice[] = [
    ...plan.changes.map((change) => choiceFor(change, plan, journal)),
    ...leftOutRows(plan),
  ];
  const picked = await vscode.window.showQuickPick(rows, {
    title: titleOf(plan),
    placeHolder: vscode.l10n.t('Enter writes the ticked notes, Escape writes nothing'),
    canPickMany: true,
    matchOnDetail: true,
    ignoreFocusOut: true,
  });
  return picked?.flatMap((row) => row.change ?? []);
}

/**
 * Lays next week's sessions into its day notes: shown first, written as one step that one undo takes back. What
 * stands in the notes stays.
 */
export function registerNextWeekCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'writeNextWeek', async (id) => {
    const journal = await chooseJournal(context.journals, id);
    if (!journal) return;
    const plan = planNextWeek(journal.journal, { today: journal.today(), zone: journal.zone() });
    if (plan.changes.length === 0) {
      void vscode.window.showInformationMessage(nothingToWrite(plan));
      return;
    }
    const kept = await preview(plan, journal);
    if (!kept || kept.length === 0) return;
    await applyChanges(journal, kept);
    // Undo goes by the note in front: with one of the new notes there, it takes all of them back.
    const [first] = kept;
    if (first) await vscode.window.showTextDocument(journal.uriOf(first.note));
    vscode.window.setStatusBarMessage(
      vscode.l10n.t('{0} notes written. Undo takes them back in one step.', kept.length),
      8000,
    );
  });
}

function nothingToWrite(plan: NextWeek): string {
  const [first] = plan.leftOut;
  if (first) return vscode.l10n.t('Nothing could be placed in {0}: {1}', plan.week, say(first.why));
  return vscode.l10n.t('{0} already holds all that your goals ask for. There is nothing to add.', plan.week);
}
