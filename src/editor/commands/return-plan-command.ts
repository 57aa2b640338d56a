import * as vscode from 'vscode';
import { addDays, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { dateOfNote } from '../../planning/day-note-path';
import type { NoteChange } from '../../planning/note-change';
import type { PlannedSession } from '../../planning/plan-weeks';
import {
  planReturnInSlices,
  type ReturnPlan,
  type ReturnPlanOptions,
  type ReturnWeek,
  returnWeekCounts,
} from '../../planning/return-plan';
import { minutesInWords } from '../../training/wording';
import { applyChanges } from '../apply-changes';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { planOptions } from '../plan-preview/plan-options';
import { searchWithNotice } from '../search-with-notice';
import { say } from '../sentences';
import { showWritten } from '../show-written';
import { tellCautions } from '../tell-cautions';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

interface ReturnRow extends vscode.QuickPickItem {
  readonly change?: NoteChange;
}

async function askCount(): Promise<ReturnPlanOptions['count'] | undefined> {
  const picked = await vscode.window.showQuickPick(
    [...returnWeekCounts].reverse().map((count) => ({
      label: vscode.l10n.t('{0} weeks', count),
      description: {
        2: vscode.l10n.t('50 and 30 % less than your fullest week'),
        3: vscode.l10n.t('50, 30 and 20 % less'),
        4: vscode.l10n.t('50, 30, 20 and 10 % less, all the steps'),
      }[count],
      count,
    })),
    { title: vscode.l10n.t('Getting going again: in how many weeks?') },
  );
  return picked?.count;
}

/** Plans in slices, with a message that can stop it. */
async function plan(
  journal: OpenJournal,
  count: ReturnPlanOptions['count'],
): Promise<ReturnPlan | undefined | 'stopped'> {
  const { today, zone, comfortable, timeOfDay } = planOptions(journal, [], 'new');
  return searchWithNotice((slices) =>
    planReturnInSlices(journal.journal, {
      today,
      zone,
      count,
      ...(comfortable ? { comfortable } : {}),
      ...(timeOfDay ? { timeOfDay } : {}),
      ...slices,
    }),
  );
}

function sessionWords({ start, kind, goal }: PlannedSession): string {
  const time = start === undefined ? '' : `${formatTime(start)} `;
  return `${time}${kind}${goal === undefined ? '' : vscode.l10n.t(' for {0}', goal)}`;
}

function noteRow(change: NoteChange, { placed }: ReturnWeek): ReturnRow {
  const date = dateOfNote(change.note);
  const sessions = placed.filter((session) => session.date === date);
  const minutes = sessions.reduce((sum, session) => sum + session.minutes, 0);
  const where = change.kind === 'create' ? vscode.l10n.t('new note') : vscode.l10n.t('added to the note');
  const what = sessions.length === 0 ? vscode.l10n.t('rest day') : sessions.map(sessionWords).join(', ');
  return {
    label: `${editorWords().dates.short(date as IsoDate)}: ${what}`,
    description: minutes === 0 ? where : `${minutesInWords(minutes)}, ${where}`,
    picked: true,
    change,
  };
}

function weekRows(week: ReturnWeek, changes: readonly NoteChange[]): readonly ReturnRow[] {
  const { limit, holds, stoodOver } = week;
  const first = isoDate(mondayOf(limit.week));
  const last = addDays(first, 6);
  const words = vscode.l10n.t('{0}: {1} sessions, {2} % less', limit.week, holds.sessions, limit.cutPercent);
  return [
    { label: words, kind: vscode.QuickPickItemKind.Separator },
    ...(stoodOver
      ? [
          {
            label: `$(info) ${vscode.l10n.t('What stands in this week is more than its step: {0} sessions', limit.sessions)}`,
            detail: vscode.l10n.t(
              'Nothing is added and nothing is taken away. Move or skip what is too much.',
            ),
          },
        ]
      : []),
    ...changes
      .filter((change) => dateOfNote(change.note) >= first && dateOfNote(change.note) <= last)
      .map((change) => noteRow(change, week)),
  ];
}

function rows({ weeks, forecasts, changes }: ReturnPlan): readonly ReturnRow[] {
  return [
    ...(forecasts.length === 0
      ? []
      : [
          { label: vscode.l10n.t('If the pace comes back'), kind: vscode.QuickPickItemKind.Separator },
          ...forecasts.map(({ goal, daysLater, message }) => ({
            label: `$(graph-line) ${goal}`,
            description: vscode.l10n.t('{0} days later', daysLater),
            detail: say(message),
          })),
        ]),
    ...weeks.flatMap((week) => weekRows(week, changes)),
  ];
}

async function preview(found: ReturnPlan): Promise<readonly NoteChange[] | undefined> {
  const { limits } = found;
  tellCautions(found.cautions);
  const picked = await vscode.window.showQuickPick([...rows(found)], {
    title:
      limits.break && limits.break.backOn === undefined
        ? vscode.l10n.t('Back in steps after {0} days without a session', limits.break.days)
        : vscode.l10n.t('Back in steps'),
    placeHolder: vscode.l10n.t('Enter writes the ticked notes, Escape writes nothing'),
    canPickMany: true,
    matchOnDetail: true,
    ignoreFocusOut: true,
  });
  return picked?.flatMap(({ change }) => change ?? []);
}

/**
 * Writes two to four weeks of a return in steps after a break, or while sessions slip: shown first, written as one step
 * that one undo takes back. What stands in the notes stays, and so do goals and their dates.
 */
export function registerReturnPlanCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'writeReturnPlan', async (id) => {
    const journal = await chooseJournal(context.journals, id);
    const count = journal && (await askCount());
    if (!journal || !count) return;
    const found = await plan(journal, count);
    if (found === 'stopped') return;
    if (!found || found.changes.length === 0) {
      void vscode.window.showInformationMessage(
        found
          ? vscode.l10n.t(
              'The coming weeks hold all that the steps of a return allow. There is nothing to add.',
            )
          : vscode.l10n.t(
              'There is no break of two weeks or more to come back from, and no slide. Next week is planned as ever.',
            ),
      );
      return;
    }
    const kept = await preview(found);
    const [first] = kept ?? [];
    if (!kept || !first) return;
    await applyChanges(journal, kept);
    await showWritten(
      journal.uriOf(first.note),
      vscode.l10n.t('{0} notes written. Undo takes them back in one step.', kept.length),
    );
  });
}
