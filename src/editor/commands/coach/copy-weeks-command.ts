import * as vscode from 'vscode';
import { isoDate } from '../../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, mondayOf, weeksInRow } from '../../../notation/time/iso-week';
import { formatTime } from '../../../notation/time/wall-clock';
import {
  type CopiedWeek,
  type CopyPlan,
  copyChanges,
  copyWeeksInSlices,
  mostCopiedWeeks,
} from '../../../planning/coach/copy-weeks';
import type { PlannedSession } from '../../../planning/plan-weeks';
import { weekReader } from '../../../training/training-week';
import { minutesInWords } from '../../../training/wording';
import { applyChanges } from '../../apply-changes';
import { editorWords } from '../../editor-words';
import type { FeatureContext } from '../../feature-context';
import type { OpenJournal } from '../../open-journal';
import { isRecord } from '../../page/read-message';
import { planOptions } from '../../plan-preview/plan-options';
import { searchWithNotice } from '../../search-with-notice';
import { say } from '../../sentences';
import { showWritten } from '../../show-written';
import { registerCommand } from '../run-command';
import { pickAthlete, severalJournals, under18Words } from './pick-athlete';

/** Weeks behind and ahead of this one from which sessions can be copied. */
const [weeksBack, weeksAhead] = [12, 12];

interface SessionRow extends vscode.QuickPickItem {
  readonly session?: PlannedSession;
}

/** The first day of a week. */
function fromWords(week: IsoWeek, journal: OpenJournal): string {
  return vscode.l10n.t('from {0}', editorWords().dates.day(isoDate(mondayOf(week)), journal.today()));
}

/** The weeks of an athlete in which sessions stand, and how many. */
function filledWeeks(journal: OpenJournal): readonly { readonly week: IsoWeek; readonly sessions: number }[] {
  const today = journal.today();
  const weeks = weekReader(journal.journal, today);
  return weeksInRow(addWeeks(isoWeekOf(today), -weeksBack), weeksBack + weeksAhead + 1)
    .map((week) => ({ week, sessions: weeks(week).standing.length }))
    .filter(({ sessions }) => sessions > 0);
}

/** The first week to copy, and how many weeks in a row hold sessions from then on. */
async function askSource(
  from: OpenJournal,
): Promise<{ readonly firstWeek: IsoWeek; readonly most: number } | undefined> {
  const filled = filledWeeks(from);
  if (filled.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('No session of {0} stands in the weeks around this one.', from.title),
    );
    return undefined;
  }
  const picked = await vscode.window.showQuickPick(
    filled.map(({ week, sessions }) => ({
      label: week as string,
      description: [
        fromWords(week, from),
        sessions === 1 ? vscode.l10n.t('1 session') : vscode.l10n.t('{0} sessions', sessions),
      ].join(', '),
      week,
    })),
    { title: vscode.l10n.t('From which week of {0} on?', from.title) },
  );
  if (!picked) return undefined;
  const last = filled.at(-1)?.week ?? picked.week;
  const span = (mondayOf(last) - mondayOf(picked.week)) / 7 + 1;
  return { firstWeek: picked.week, most: Math.min(mostCopiedWeeks, span) };
}

async function askCount(most: number): Promise<number | undefined> {
  if (most === 1) return 1;
  const picked = await vscode.window.showQuickPick(
    Array.from({ length: most }, (_, index) => ({
      label: index === 0 ? vscode.l10n.t('1 week') : vscode.l10n.t('{0} weeks', index + 1),
      count: index + 1,
    })),
    { title: vscode.l10n.t('How many weeks?') },
  );
  return picked?.count;
}

async function askTarget(into: OpenJournal): Promise<IsoWeek | undefined> {
  const current = isoWeekOf(into.today());
  const weeks = [1, ...Array.from({ length: weeksAhead - 1 }, (_, index) => index + 2), 0];
  const picked = await vscode.window.showQuickPick(
    weeks.map((offset) => ({
      label: addWeeks(current, offset) as string,
      description:
        offset === 0
          ? vscode.l10n.t('what is left of this week')
          : fromWords(addWeeks(current, offset), into),
      week: addWeeks(current, offset),
    })),
    { title: vscode.l10n.t('Into which week of {0}?', into.title) },
  );
  return picked?.week;
}

function sessionRow(session: PlannedSession, into: OpenJournal): SessionRow {
  const { date, start, kind, minutes, why } = session;
  const day = editorWords().dates.weekdayAndDay(date, into.today());
  const time = start === undefined ? '' : ` ${formatTime(start)}`;
  return {
    label: `${day}${time}: ${kind}`,
    description: vscode.l10n.t('{0}; {1}', minutesInWords(minutes), say(why)),
    picked: true,
    session,
  };
}

function weekRows(
  { from, week, sessions, placed, leftOut }: CopiedWeek,
  into: OpenJournal,
): readonly SessionRow[] {
  const inPlace = sessions - placed.length - leftOut.length;
  return [
    {
      label: vscode.l10n.t('{0} as {1}: {2} of {3} placed', from, week, placed.length, sessions),
      kind: vscode.QuickPickItemKind.Separator,
    },
    ...placed.map((session) => sessionRow(session, into)),
    ...leftOut.map(({ kind, why }) => ({
      label: `$(circle-slash) ${vscode.l10n.t('{0} does not fit', kind)}`,
      description: say(why),
    })),
    ...(inPlace > 0
      ? [
          {
            label: `$(check) ${vscode.l10n.t('{0} alike in the week already', inPlace)}`,
            description: vscode.l10n.t('nothing is doubled'),
          },
        ]
      : []),
  ];
}

function routineRows({ routines, routinesTaken }: CopyPlan): readonly SessionRow[] {
  return [
    ...routines.map((id) => ({
      label: `$(book) ${vscode.l10n.t('The routine {0} comes along', id)}`,
    })),
    ...routinesTaken.map((id) => ({
      label: `$(info) ${vscode.l10n.t('A routine {0} stands there already', id)}`,
      description: vscode.l10n.t('its own exercises are written into the notes'),
    })),
  ];
}

async function preview(
  found: CopyPlan,
  from: OpenJournal,
  into: OpenJournal,
): Promise<readonly PlannedSession[] | undefined> {
  const rows = [
    ...found.weeks.flatMap((week) => weekRows(week, into)),
    ...routineRows(found),
    ...(into.journal.plan.athlete?.minor ? [{ label: `$(warning) ${under18Words(into)}` }] : []),
  ];
  const picked = await vscode.window.showQuickPick(rows, {
    title: vscode.l10n.t('From {0} to {1}, by the rules and hours of {1}', from.title, into.title),
    placeHolder: vscode.l10n.t('Enter writes the ticked sessions, Escape writes nothing'),
    canPickMany: true,
    ignoreFocusOut: true,
  });
  return picked?.flatMap(({ session }) => session ?? []);
}

/**
 * Copies planned weeks of one athlete to another one, placed by the rules of the other: shown first, written as one step
 * that one undo takes back. Keyboard shortcuts may name both journals, as `from` and `into`.
 */
export function registerCopyWeeksCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'copyWeeks', async (asked) => {
    const journals = await severalJournals(context.journals);
    const named = (name: string) =>
      isRecord(asked) ? journals?.find(({ id }) => id === asked[name]) : undefined;
    const from =
      journals && (named('from') ?? (await pickAthlete(journals, vscode.l10n.t('Whose weeks are copied?'))));
    const source = from && (await askSource(from));
    const count = source && (await askCount(source.most));
    if (!journals || !from || !source || count === undefined) return;
    const others = journals.filter((journal) => journal !== from);
    const into =
      others.find((journal) => journal === named('into')) ??
      (await pickAthlete(others, vscode.l10n.t('To which athlete?')));
    const to = into && (await askTarget(into));
    if (!into || to === undefined) return;
    const { weeks: _weeks, mode: _mode, ...rules } = planOptions(into, [], 'new');
    const options = { ...rules, from: from.journal, firstWeek: source.firstWeek, count, to };
    const found = await searchWithNotice((slices) =>
      copyWeeksInSlices(into.journal, { ...options, ...slices }),
    );
    const kept = found && (await preview(found, from, into));
    const changes = kept ? copyChanges(into.journal, options, kept) : [];
    const [first] = changes;
    if (!first) return;
    await applyChanges(into, changes);
    await showWritten(
      into.uriOf(first.note),
      vscode.l10n.t('{0} notes written. Undo takes them back in one step.', changes.length),
    );
  });
}
